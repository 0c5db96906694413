package sheets

import "bodkin/sheets/figure"

// key is the line below a drawing that names its fills and strokes. It goes on
// below when the line is full.
type key struct {
	measure           figure.Measurer
	left, x, y, right float64
	items             []figure.Item
}

const (
	swatchWide = 7
	swatchHigh = 2.2
	keyGap     = 5
	keyLine    = 4.2
)

// newKey starts at a left end and a baseline and may be wide mm wide.
func newKey(m figure.Measurer, left, baseline, wide float64) *key {
	return &key{measure: m, left: left, x: left, y: baseline, right: left + wide}
}

// place makes room for a sample and its words and returns the sample's left end.
func (k *key) place(words string) float64 {
	need := swatchWide + 1.5 + k.measure.TextWidth(words, keyType, false)
	if k.x > k.left && k.x+need > k.right {
		k.x, k.y = k.left, k.y+keyLine
	}
	x := k.x
	k.items = append(k.items, figure.Text{At: figure.Point{X: x + swatchWide + 1.5, Y: k.y}, Size: keyType, Words: words})
	k.x += need + keyGap
	return x
}

func (k *key) swatch(f figure.Fill, words string) {
	x := k.place(words)
	k.items = append(k.items, figure.Rect(figure.Point{X: x, Y: k.y - swatchHigh}, swatchWide, swatchHigh, figure.Stroke{Width: figure.Hairline}, f))
}

func (k *key) sample(s figure.Stroke, words string) {
	x := k.place(words)
	y := k.y - swatchHigh/2
	k.items = append(k.items, figure.Line(figure.Point{X: x, Y: y}, figure.Point{X: x + swatchWide, Y: y}, s))
}
