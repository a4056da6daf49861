package sheet

import "standclear/render"

func (w *writer) flashingSheet(s *render.Sheet, l layoutOf) (string, bool) { return "NTS", true }
