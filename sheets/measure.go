package sheets

import (
	"strings"

	"bodkin/sheets/pdf/typeface"
)

// measurer measures the words of figures in DejaVu Sans, which the PDF is set
// in and which is wider than the sans-serif that a browser is likely to take.
// A character that it does not have counts as wide as it is high.
type measurer struct{ faces typeface.Faces }

// wrapped are words in lines no wider than room mm, where no word is wider.
func (m *measurer) wrapped(words string, size, room float64) []string {
	var lines []string
	for _, word := range strings.Fields(words) {
		k := len(lines) - 1
		if k >= 0 && m.TextWidth(lines[k]+" "+word, size, false) <= room {
			lines[k] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

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
