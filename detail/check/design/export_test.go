package design

import (
	"standclear/detail"
	"standclear/detail/same"
)

// FitKey is fitKey.
func FitKey(a *detail.Assembly) same.Sum { return fitKey(a, a.Key()) }
