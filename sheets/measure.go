package sheets

import "bodkin/sheets/pdf/typeface"

// measurer measures the words of figures in DejaVu Sans, which the PDF is set
// in and which is wider than the sans-serif that a browser is likely to take.
// A character that it does not have counts as wide as it is high.
type measurer struct{ faces typeface.Faces }

func (m *measurer) TextWidth(words string, size float64, bold bool) float64 {
	style := typeface.Style(0)
	if bold {
		style = typeface.Bold
	}
	sum := 0
	for _, r := range words {
		if w, ok := m.faces.Advance(style, r); ok {
			sum += w
		} else {
			sum += 1000
		}
	}
	return float64(sum) * size / 1000
}
