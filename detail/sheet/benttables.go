package sheet

func (w *writer) bentTables(width float64) []*table {
	return []*table{{title: "PIECES", width: []float64{width}, rows: [][]string{{"-"}}}}
}
