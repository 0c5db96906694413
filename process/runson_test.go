package process_test

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/templates"
)

// slitSkirt is the skirt of the shelf with its side seams open below the hip.
func slitSkirt(t testing.TB) *templates.Garment {
	t.Helper()
	data, file := templates.Text("pull-on-skirt")
	text := string(data)
	for _, r := range [][2]string{
		{"{edge: side,   from: hem_side,   to: under_hip}", "{edge: slit,   from: hem_side,   to: under_hip}"},
		{"      - {mark: hip level, edge: side, after: below}\n", ""},
		{`    along: [front.hem, back.hem]
    across: true
    closed: true
`, `    along: [front.hem]
    across: true
  - {edge: back_hem, title: back hem, kind: hem, along: [back.hem], across: true}
  - {edge: front_slit, title: front slit edge, kind: facing, along: [front.slit], each_side: true}
  - {edge: back_slit, title: back slit edge, kind: facing, along: [back.slit], each_side: true}
`},
	} {
		if !strings.Contains(text, r[0]) {
			t.Fatalf("the skirt has no %q", r[0])
		}
		text = strings.ReplaceAll(text, r[0], r[1])
	}
	g, err := templates.Parse(file, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// A French seam needs the same allowance along its whole length and an end where
// it can stop, so that it does not go over into a slit: common practice, no
// source. The same skirt without slits has one.
func TestNoFrenchSeamAboveASlit(t *testing.T) {
	shelf := loadShelf(t)
	g := slitSkirt(t)
	j := jobFor(g, "silk-georgette", "cotton-lawn")
	p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: rooms()[0], Shelf: shelf}, order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatal(err)
	}
	side := seamOf(t, p, "side")
	r, ok := rejectedAs(side, "french")
	if !ok || !r.RuledOut || !strings.Contains(strings.Join(r.Because, "; "), "the same allowance along its whole length") {
		t.Errorf("the side above a slit is %s, and French is refused because %q", side.Construction, r.Because)
	}
	if s := seamOf(t, chosen(t, shelf, j, rooms()[0]), "side"); s.Construction != "french" {
		t.Errorf("without a slit it is %s", s.Construction)
	}
}
