package process_test

import (
	"errors"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// A tube of two halves. Its upper band is to be closed by the one seam, its
// lower by the other, so each seam waits for the band that waits for the other
// seam.
const circular = `garment: circular-tube
title: Tube that cannot be sewn
source: made for a test
measures:
  half: {title: Half the round, how: half of what it goes round, default: 30 cm, least: 10 cm, most: 60 cm}
cloths: {main: {title: the tube}}
pieces:
  - piece: left
    title: Left half
    cloth: main
    cut: one
    grain: lengthwise
    points: {a: [0, 0], b: [half, 0], c: [half, 300], d: [0, 300]}
    outline:
      - {edge: lower, from: a, to: b}
      - {edge: side, from: b, to: c}
      - {edge: upper, from: c, to: d}
      - {edge: over, from: d, to: a}
  - piece: right
    title: Right half
    cloth: main
    cut: one
    grain: lengthwise
    points: {a: [0, 0], b: [half, 0], c: [half, 300], d: [0, 300]}
    outline:
      - {edge: lower, from: a, to: b}
      - {edge: side, from: b, to: c}
      - {edge: upper, from: c, to: d}
      - {edge: over, from: d, to: a}
joins:
  - {join: side, title: side seam, a: [left.side], b: [right.side]}
  - {join: over, title: over seam, a: [left.over], b: [right.over]}
edges:
  - {edge: upper, title: upper edge, kind: band, along: [left.upper, right.upper], closed: true, closed_by: side}
  - {edge: lower, title: lower edge, kind: band, along: [left.lower, right.lower], closed: true, closed_by: over}
`

func TestCircularGarmentIsNamed(t *testing.T) {
	g, err := templates.Parse("circular.yaml", []byte(circular))
	if err != nil {
		t.Fatal(err)
	}
	_, err = process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g,
		Workroom: rooms()[0], Shelf: loadShelf(t)}, order.Options{})
	c, ok := errors.AsType[*process.CycleError](err)
	if !ok {
		t.Fatalf("not a cycle but %v", err)
	}
	for _, w := range []string{"upper", "lower", "side", "over", "because", "waits for", "closes"} {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("%q does not say %q", err.Error(), w)
		}
	}
	if len(c.Round) != 4 {
		t.Errorf("the circle is %v", c.Round)
	}
}
