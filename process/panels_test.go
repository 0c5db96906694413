package process_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams/length"
)

// A pleated front that is wider than its cloth is joined from panels in the inner
// folds of its pleats, before anything else is done to it: no panel is wider than
// the cloth, and all seams lie halfway between a pleat's line and its fold. The
// lengths of cloth are those of a lay that has the panels.
func TestTooWideForTheCloth(t *testing.T) {
	shelf := loadShelf(t)
	g := garmentOf(t, "pleated-skirt")
	for _, w := range rooms() {
		j := jobFor(g, "cotton-poplin", "cotton-poplin")
		j.Size = append(j.Size, pair("hip", "124 cm"), pair("waist", "100 cm"))
		p := plan(t, j, w, shelf)
		checkOrder(t, p)
		joined, sewn := -1, -1
		for k, o := range p.Operations {
			switch {
			case strings.HasPrefix(o.ID, "panels.front"):
				joined = k
			case (o.Seam == "front-pleat" || o.Seam == "hem" || o.Seam == "side") && sewn < 0:
				sewn = k
			}
			if o.ID == "cut.main" && (!strings.Contains(o.Text, "from panels") || !strings.Contains(o.Text, "in the inner fold of a pleat, because there the seams do not show")) {
				t.Errorf("%s: nothing of panels in %q", w.Name, o.Text)
			}
		}
		if joined < 0 || sewn < joined {
			t.Errorf("%s: panels are joined at %d, the front is sewn at %d", w.Name, joined, sewn)
		}
		if strings.Contains(p.Cloths[0].Basis, "turn it") {
			t.Errorf("%s: %s", w.Name, p.Cloths[0].Basis)
		}
	}
	j := jobFor(g, "cotton-poplin", "cotton-poplin")
	for _, o := range plan(t, j, rooms()[0], shelf).Operations {
		if strings.HasPrefix(o.ID, "panels.") {
			t.Error("a front that the cloth takes is joined from panels")
		}
	}
}

// A piece that is too wide for its cloth is laid across where the cloth looks alike
// across and the piece is no longer than the cloth is wide; in cloth with a
// direction it is joined from panels, wherever the cloth allows. The panels, less
// the allowances of their joins, are together as wide as the piece, and none is
// wider than the cloth.
func TestLaidAcrossOrInPanels(t *testing.T) {
	shelf := loadShelf(t)
	width := regexp.MustCompile(`(one|\d+) of (\d+(?:\.\d+)? [cm]m)`)
	for _, tt := range []struct {
		garment, cloth, piece string
		width                 length.MM
		across                bool
		because               string
	}{
		{"boxy-top", "cotton-poplin", "front", 800, true, "the cloth is woven and looks alike both ways up and across"},
		{"boxy-top", "velvet", "front", 800, false, "the cloth has a direction"},
		{"boxy-top", "cotton-poplin", "front", 600, false, "it is too long to be laid across"},
		{"circle-skirt", "cotton-poplin", "front", 800, true, "the cloth is woven and looks alike both ways up and across"},
		{"circle-skirt", "velvet", "front", 800, false, "the cloth has a direction"},
		{"boxy-top", "cotton-jersey", "back", 800, false, "knitted cloth gives across"},
	} {
		j := jobFor(garmentOf(t, tt.garment), tt.cloth, "cotton-lawn")
		j.Cloth[0].Value.Width = tt.width
		p := plan(t, j, rooms()[3], shelf)
		checkOrder(t, p)
		piece := p.Pieces[slices.IndexFunc(p.Pieces, func(x process.Piece) bool { return x.Name == tt.piece })]
		cut := p.Operations[slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == "cut.main" })].Text
		k := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.ID == "panels."+tt.piece })
		_, said, told := strings.Cut(cut, "The "+strings.ToLower(piece.Title)+" is ")
		if !told || !strings.Contains(said, tt.because) {
			t.Errorf("%s: of the %s it is said: %s", tt.cloth, tt.piece, cut)
			continue
		}
		said, _, _ = strings.Cut(said, " The ")
		if across := strings.Contains(said, "Lay it across: its grain line from selvedge to selvedge"); across != tt.across || (k < 0) != tt.across {
			t.Errorf("%s: the %s is laid across: %v, joined in operation %d", tt.cloth, tt.piece, across, k)
		}
		if tt.across {
			continue
		}
		sum, panels := 0.0, 0
		for _, m := range width.FindAllStringSubmatch(said, -1) {
			n, err := strconv.Atoi(m[1])
			if err != nil {
				n = 1
			}
			each, err := length.Parse(m[2])
			if err != nil {
				t.Fatal(err)
			}
			if each > tt.width {
				t.Errorf("%s: a panel of %s in cloth of %g mm", tt.cloth, m[2], float64(tt.width))
			}
			sum, panels = sum+float64(n)*float64(each), panels+n
		}
		panels /= piece.Count
		const allowance = 15 // of each panel's edge at a join
		if got := sum/float64(piece.Count) - float64(2*(panels-1)*allowance); panels < 2 || math.Abs(got-piece.Width) > 2 {
			t.Errorf("%s: %d panels are %g mm wide without their joins, the %s %g: %s", tt.cloth, panels, got, tt.piece, piece.Width, said)
		}
	}
}
