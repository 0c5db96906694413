package process_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// hungLinings are the garments that can be lined, each with the order in which the
// lining's edges come: made up, laid under an edge, felled beside the zip, then
// taken in (common practice, no source); and orders that are refused, with a word
// of the reason.
func hungLinings() []lined {
	return []lined{
		{"a-line-skirt", "hung", [][2]string{{"front", "lining-front"}, {"back", "lining-back"}},
			"lining-centre-back lining-side centre-back side zip lining lining-opening waist hem lining-hem hook",
			map[string]string{
				"lining lining-side waist":    "lining side seam is sewn before the lining takes in",
				"side waist lining":           "waist edge takes in the lining",
				"lining waist lining-opening": "lies over the upper ends",
				"lining-opening lining waist": "hangs before it is felled",
				"lining zip waist":            "closes over the end of the zip",
				"lining waist lining-hem hem": "measured up from the hem",
			}},
		{"six-gore-skirt", "hung", [][2]string{{"front", "lining-front"}, {"side-back", "lining-side-back"}},
			"lining-front-gore lining-back-gore lining-side front-gore side zip back-gore lining lining-opening waistband hem lining-hem waistband-hook",
			map[string]string{
				"lining lining-back-gore waistband": "lining back gore seam is sewn before the lining takes in",
				"front-gore waistband lining":       "waistband takes in the lining",
			}},
		{"waisted-dress", "hung", [][2]string{{"front", "lining-front"}, {"back", "lining-back"}, {"skirt-back", "lining-skirt-back"}},
			"shoulder side skirt-side waist centre-back zip lining-shoulder lining-side lining-skirt-side lining-waist lining-centre-back lining lining-opening neck lining-armhole sleeve-underarm sleeve-armhole hem lining-hem",
			map[string]string{
				"lining sleeve-armhole lining-armhole": "armhole seam takes in the armhole lining",
				"lining-armhole lining":                "hangs before it is laid under other edges",
				"lining lining-waist":                  "lining waist seam is sewn before the lining takes in",
			}},
	}
}

type lined struct {
	garment, choice string
	pieces          [][2]string // each of the garment with that of the lining under it
	order           string
	refused         map[string]string
}

// A lining is drawn as what lies over it, hangs 2 to 2.5 cm shorter (common
// practice, no source), is cut at its upper edge as the garment is there, and lets
// the seams that it hides be left raw.
func TestHungLining(t *testing.T) {
	shelf := loadShelf(t)
	for _, x := range hungLinings() {
		g, err := templates.Load(x.garment)
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, "wool-flannel", "polyester-lining")
		bare := plan(t, j, rooms()[0], shelf)
		j.Choices = append(j.Choices, pair("lining", x.choice))
		p := plan(t, j, rooms()[0], shelf)
		for _, r := range p.CheckOrder(strings.Fields(x.order)) {
			t.Errorf("%s: %s refused: %s", x.garment, x.order, r.Because)
		}
		for order, word := range x.refused {
			var told []string
			for _, r := range p.CheckOrder(strings.Fields(order)) {
				told = append(told, r.Because)
			}
			if !strings.Contains(strings.Join(told, "; "), word) {
				t.Errorf("%s, %s: %q does not speak of %q", x.garment, order, told, word)
			}
		}
		raw := func(p *process.Plan) (n int) {
			for _, s := range p.Seams {
				if s.Construction == "plain-open-raw" {
					n++
				}
			}
			return n
		}
		if raw(bare) > 0 || raw(p) == 0 {
			t.Errorf("%s: %d seams are left raw without a lining, %d under one", x.garment, raw(bare), raw(p))
		}
		pieces := map[string]process.Piece{}
		for _, q := range p.Pieces {
			pieces[q.Name] = q
		}
		shorter := false
		for _, pair := range x.pieces {
			over, under := pieces[pair[0]], pieces[pair[1]]
			by := over.NetHeight - under.NetHeight
			shorter = shorter || by > 1
			if by > 1 && (by < 20 || by > 25+1e-6) {
				t.Errorf("%s: the %s is %.1f mm shorter than what lies over it", x.garment, under.Name, by)
			}
			for k, e := range under.Edges {
				if e.Seam == "lining" && math.Abs(e.Allowance-over.Edges[k].Allowance) > 1e-9 {
					t.Errorf("%s: the %s of the %s is cut with %.1f, over it %.1f", x.garment, e.Name, under.Name, e.Allowance, over.Edges[k].Allowance)
				}
			}
		}
		measured := false
		for _, c := range p.Checks {
			measured = measured || c.Expect == 25 && strings.HasPrefix(c.What, "Lining hem: above the hem")
		}
		if !measured {
			t.Errorf("%s: nobody measures how far above the hem the lining ends", x.garment)
		}
		if !shorter {
			t.Errorf("%s: no piece of the lining is shorter", x.garment)
		}
	}
}

// What hangs is left to drop once: at the fitting, where there is one.
func TestHangsOnce(t *testing.T) {
	for _, x := range []struct{ garment, cloth string }{{"a-line-skirt", "wool-flannel"}, {"circle-skirt", "wool-flannel"}, {"bias-slip", "silk-satin"}} {
		g, err := templates.Load(x.garment)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, jobFor(g, x.cloth, x.cloth), rooms()[0], loadShelf(t))
		told := 0
		for _, o := range p.Operations {
			if strings.Contains(strings.ToLower(o.Text), "hang for") {
				told++
			}
		}
		if told != 1 {
			t.Errorf("%s in %s: it is left to hang %d times", x.garment, x.cloth, told)
		}
	}
}
