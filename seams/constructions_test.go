package seams_test

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"bodkin/seams"
)

// straight is the radius of a line without a bend.
const straight = 1e6

// shape is a seam line or an edge of a kind.
type shape struct {
	title string
	line  seams.LineFacts
}

func seamShapes() []shape {
	return []shape{
		{"straight", seams.LineFacts{Length: 600, TightestRadius: straight}},
		{"gently curved", seams.LineFacts{Length: 700, TightestRadius: 200, Turning: 60, Curved: true}},
		{"closely curved", seams.LineFacts{Length: 500, TightestRadius: 120, Turning: 80, Curved: true}},
		{"armhole", seams.LineFacts{Length: 450, TightestRadius: 60, Turning: 150, Curved: true}},
		{"collar", seams.LineFacts{Length: 380, TightestRadius: 25, Turning: 150, Curved: true}},
		{"under strain", seams.LineFacts{Length: 600, TightestRadius: straight, Strain: 2}},
		{"eased", seams.LineFacts{Length: 600, TightestRadius: straight, Eased: 12}},
		{"seen inside", seams.LineFacts{Length: 600, TightestRadius: straight, InsideSeen: true}},
		{"eased on a thread", seams.LineFacts{Length: 500, TightestRadius: straight, Eased: 25}},
		{"gathered", seams.LineFacts{Length: 900, TightestRadius: straight, Eased: 400}},
		{"sleeve cap", seams.LineFacts{Length: 450, TightestRadius: 60, Turning: 250, Curved: true, Eased: 22}},
		{"crotch", seams.LineFacts{Length: 650, TightestRadius: 70, Turning: 120, Curved: true, Strain: 3}},
		{"seat, straight", seams.LineFacts{Length: 400, TightestRadius: straight, Strain: 3}},
		{"shoulder", seams.LineFacts{Length: 130, TightestRadius: straight, Across: true, Strain: 1, Eased: 4}},
		{"above a slit", seams.LineFacts{Length: 500, TightestRadius: straight, RunsOn: true}},
		{"closing a band", seams.LineFacts{Length: 500, TightestRadius: straight, ClosesBand: true}},
		{"raglan", seams.LineFacts{Length: 380, TightestRadius: 300, Turning: 40, Curved: true, Strain: 1}},
	}
}

func hemShapes() []shape {
	return []shape{
		{"straight, free depth", seams.LineFacts{Length: 1200, TightestRadius: straight}},
		{"flared, free depth", seams.LineFacts{Length: 1650, TightestRadius: straight, Fullness: 52}},
		{"full circle, free depth", seams.LineFacts{Length: 4800, TightestRadius: 760, Turning: 360, Fullness: 251}},
		{"straight, 100 deep", seams.LineFacts{Length: 1200, TightestRadius: straight, Depth: 100}},
		{"flared, 50 deep", seams.LineFacts{Length: 1650, TightestRadius: straight, Depth: 50, Fullness: 66}},
		{"full circle, 50 deep", seams.LineFacts{Length: 4800, TightestRadius: 760, Turning: 360, Depth: 50, Fullness: 314}},
		{"straight, 8 deep", seams.LineFacts{Length: 1200, TightestRadius: straight, Depth: 8}},
		{"straight, 6 deep, seen inside", seams.LineFacts{Length: 1200, TightestRadius: straight, Depth: 6, InsideSeen: true}},
		{"rolled, 3 deep", seams.LineFacts{Length: 1200, TightestRadius: straight, Depth: 3}},
		{"rolled, 2 deep", seams.LineFacts{Length: 1200, TightestRadius: straight, Depth: 2}},
		{"scalloped", seams.LineFacts{Length: 900, TightestRadius: 20, Turning: 720, Curved: true}},
	}
}

func edgeShapes() []shape {
	return []shape{
		{"straight", seams.LineFacts{Length: 500, TightestRadius: straight}},
		{"round neck", seams.LineFacts{Length: 600, TightestRadius: 70, Turning: 300, Curved: true, Hollow: true, Closed: true}},
		{"armhole", seams.LineFacts{Length: 450, TightestRadius: 55, Turning: 200, Curved: true, Hollow: true, Closed: true}},
		{"V neck", seams.LineFacts{Length: 620, Turning: 230, Curved: true, Hollow: true, Point: true, Closed: true}},
		{"tight scoop", seams.LineFacts{Length: 300, TightestRadius: 22, Turning: 200, Curved: true, Hollow: true}},
		{"wide, in another cloth", seams.LineFacts{Length: 500, TightestRadius: straight, Depth: 25, OtherCloth: true}},
		{"open front and neck", seams.LineFacts{Length: 3300, TightestRadius: 110, Turning: 150, Curved: true, Hollow: true}},
		{"sleeve end", seams.LineFacts{Length: 508, TightestRadius: straight, Closed: true, Flat: true, Depth: 63.5}},
		{"sleeve end in the round", seams.LineFacts{Length: 508, TightestRadius: straight, Closed: true, Depth: 63.5}},
	}
}

func casingShapes() []shape {
	return []shape{
		{"waist", seams.LineFacts{Length: 1000, TightestRadius: straight, Closed: true, Elastic: 25, Grip: 700}},
		{"flat, closed later", seams.LineFacts{Length: 500, TightestRadius: straight, Elastic: 25, Grip: 350}},
		{"no elastic named", seams.LineFacts{Length: 1000, TightestRadius: straight, Closed: true}},
	}
}

// need is a kind of work with the shapes of line that it occurs on.
type need struct {
	work, kind string
	shapes     []shape
}

func needs() []need {
	all := []need{
		{"join", "seam", seamShapes()},
		{"edge", "hem", hemShapes()},
		{"edge", "binding", edgeShapes()},
		{"edge", "facing", edgeShapes()},
		{"edge", "band", edgeShapes()},
		{"edge", "casing", casingShapes()},
		{"join", "seam", []shape{{"a zip or a pocket set in", seams.LineFacts{Length: 600, TightestRadius: straight, Strain: 1, Opening: 180, Allowance: 20}}}},
		{"detail", "dart", []shape{{"dart", seams.LineFacts{Length: 180, TightestRadius: straight, InsideSeen: true}}}},
		{"detail", "staystitch", []shape{
			{"neck", seams.LineFacts{Length: 600, TightestRadius: 70, Turning: 300, Curved: true, Hollow: true}},
			{"bias front edge", seams.LineFacts{Length: 600, TightestRadius: straight}},
		}},
		{"detail", "strip", []shape{{"strip", seams.LineFacts{Length: 1500, TightestRadius: straight}}}},
	}
	for kind, length := range detailLengths() {
		all = append(all, need{"detail", kind, []shape{{kind, seams.LineFacts{Length: length, TightestRadius: straight, InsideSeen: true}}}})
	}
	slices.SortStableFunc(all, func(a, b need) int { return strings.Compare(a.work+a.kind, b.work+b.kind) })
	for i := range all {
		if slices.Contains([]string{"zip", "snap"}, all[i].kind) {
			all[i].shapes = append(all[i].shapes, shape{all[i].kind + " under strain",
				seams.LineFacts{Length: all[i].shapes[0].line.Length, TightestRadius: straight, Strain: 2}})
		}
		if all[i].kind == "lining-hung" {
			all[i].shapes = append(all[i].shapes, shape{"lining hung in an armhole",
				seams.LineFacts{Length: 480, TightestRadius: 60, Turning: 360, Curved: true, Closed: true, Allowance: 10}})
		}
		if all[i].kind == "pleat" {
			all[i].shapes = append(all[i].shapes, shape{"pleat at an edge", seams.LineFacts{Length: 30, TightestRadius: straight, Depth: 12}})
		}
		if all[i].kind == "cuff" {
			all[i].shapes = append(all[i].shapes, shape{"cuff with a lap",
				seams.LineFacts{Length: 240, TightestRadius: straight, Strain: 1, Depth: 60, Lap: 20, OwnWidth: 120}})
		}
		if all[i].kind == "waistband" {
			all[i].shapes = append(all[i].shapes, shape{"waistband with a lap, the waist eased to it",
				seams.LineFacts{Length: 730, TightestRadius: 110, Turning: 360, Curved: true, Strain: 1, Eased: 10, Depth: 40, Lap: 30, OwnWidth: 80}})
		}
	}
	return all
}

// detailLengths are lines that details of a kind are worked along, in mm.
func detailLengths() map[string]float64 {
	return map[string]float64{
		"double-pointed-dart": 280, "tuck": 300, "pleat": 600, "gathers": 500,
		"patch-pocket": 420, "in-seam-pocket": 400, "slanted-pocket": 450, "placket": 120, "zip": 400,
		"buttonhole": 21, "button": 15, "hook": 10, "snap": 10, "tie": 400, "loop": 60, "belt": 1800, "strap": 340,
		"stand-collar": 420, "flat-collar": 420, "shirt-collar": 420, "cuff": 240, "front-band": 650, "waistband": 720, "vent": 200, "lining": 2500, "lining-edge": 2600, "lining-armhole": 480, "lining-hung": 780, "lining-opening": 180,
	}
}

// oddCloths are properties that no cloth on the shelf has: a knit that ravels,
// one that is sheer, one with pile, one that hardly gives, a woven, a
// nonwoven and a furry cloth that bear no iron, a felt.
const oddCloths = `
- {cloth: raveling-knit, title: Raveling knit, fibre: wool, structure: knit, weight: 250, thickness: 1.2, fraying: 2,
   stretch: {across: 60, along: 30}, heat_dots: 2, steam: true, widths: [140 cm], source: made for a test}
- {cloth: sheer-knit, title: Sheer knit, fibre: polyamide, structure: knit, weight: 60, thickness: 0.25, sheerness: 2,
   stretch: {across: 60, along: 20}, heat_dots: 1, widths: [150 cm], source: made for a test}
- {cloth: pile-knit, title: Pile knit, fibre: polyester, structure: knit, weight: 240, thickness: 1.2, pile: true,
   stretch: {across: 25, along: 10}, heat_dots: 1, widths: [150 cm], source: made for a test}
- {cloth: coated, title: Coated cloth, fibre: polyester, structure: woven, weight: 140, thickness: 0.3, fraying: 1,
   holes_stay: true, heat_dots: 0, widths: [140 cm], source: made for a test}
- {cloth: firm-knit, title: Firm knit, fibre: polyester, structure: knit, weight: 280, thickness: 0.9,
   stretch: {across: 15, along: 5}, heat_dots: 1, widths: [150 cm], source: made for a test}
- {cloth: fur, title: Fur cloth, fibre: polyester, structure: knit, weight: 700, thickness: 10, pile: true, one_way: true,
   stretch: {across: 10, along: 5}, heat_dots: 0, widths: [150 cm], source: made for a test}
- {cloth: hide, title: Hide-like cloth, fibre: polyester, structure: nonwoven, weight: 400, thickness: 0.9, holes_stay: true,
   heat_dots: 0, widths: [140 cm], source: made for a test}
- {cloth: felt, title: Felt, fibre: wool, structure: nonwoven, weight: 300, thickness: 1.5,
   heat_dots: 2, steam: true, widths: [90 cm], source: made for a test}
`

// withOdd is the shelf with the odd cloths, read once for all tests.
var withOdd = sync.OnceValues(func() (*seams.Shelf, error) {
	return seams.LoadWhole(seams.File{Name: "odd-cloths.yaml", Data: []byte(oddCloths)})
})

func everyCloth(t testing.TB) *seams.Shelf {
	t.Helper()
	s, err := withOdd()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func clothFacts(t testing.TB, s *seams.Shelf, name string) seams.ClothFacts {
	t.Helper()
	c, err := s.Cloth(name)
	if err != nil {
		t.Fatal(err)
	}
	return c.Facts()
}

func constructionOf(t testing.TB, s *seams.Shelf, name string) *seams.Construction {
	t.Helper()
	c, err := s.Construction(name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// scene is one place of a garment in one room.
type scene struct {
	need  need
	title string
	facts seams.Facts
	// varied says that the cloth stands for others, so all is tried on it.
	varied bool
	// house says that house figures are set, which may make a seam impossible.
	house bool
}

// scenes are the questions that a kind of line puts to the constructions for a
// need. On the first line of a kind every cloth is asked for in every room; two
// cloths or rooms that no rule or formula for the need can tell apart put the
// same question, which stands here once. On a further line a cloth is in hand in
// one room, another for each line and cloth; one that stands for the others in
// three, with hands alone among them, because what hands can do is open to every
// room. With these one thing more at a time is tried: see variations.
func scenes(t testing.TB, s *seams.Shelf, n need, sh shape, cloths []seams.Cloth) []scene {
	var out []scene
	a := asks(s, n)
	rooms := a.rooms(s)
	facts := make([]seams.WorkroomFacts, len(rooms))
	for i, r := range rooms {
		facts[i] = r.facts(s, "", nil)
	}
	nth := slices.IndexFunc(n.shapes, func(other shape) bool { return other.title == sh.title })
	for k, c := range a.cloths(cloths) {
		f := seams.Facts{Cloth: c.Facts(), Applied: c.Facts(), Join: sh.line, Edge: sh.line}
		title := fmt.Sprintf("%s %s, %s, %s", n.work, n.kind, sh.title, c.Name)
		stands, one := slices.Contains(standing(), c.Name), (nth+k)%len(rooms)
		for i, r := range rooms {
			if nth > 0 && i != one && !(stands && (i == 0 || i == (one+len(rooms)/2)%len(rooms))) {
				continue
			}
			f.Workroom = facts[i]
			out = append(out, scene{need: n, title: title + ", " + r.title, facts: f, varied: stands})
		}
	}
	for k, name := range standing() {
		if k%oneIn != 0 {
			continue
		}
		c := clothFacts(t, s, name)
		f := seams.Facts{Cloth: c, Applied: c, Join: sh.line, Edge: sh.line}
		title := fmt.Sprintf("%s %s, %s, %s", n.work, n.kind, sh.title, name)
		out = append(out, variations(t, s, n, title, f, nth+k)...)
	}
	return out
}

// standing are the cloths that stand for the others: transparent, thin, firm,
// thick, knitted, pile, openwork and unwoven.
func standing() []string {
	return []string{"silk-organza", "silk-habotai", "quilting-cotton", "linen-medium", "denim", "wool-flannel", "cotton-jersey", "velvet", "cotton-lace", "hide"}
}

// variations are a cloth on a line with one thing more: what the house favours,
// a lining or a child, house figures, another cloth. What differs between lines
// and cloths takes turns.
func variations(t testing.TB, s *seams.Shelf, n need, title string, f seams.Facts, turn int) []scene {
	var out []scene
	add := func(how string, house bool, f seams.Facts) {
		out = append(out, scene{need: n, title: title + ", " + how, facts: f, varied: true, house: house})
	}
	for i, favour := range []string{"quick", "neat", "strong"} {
		r := []string{"hands only", "straight stitcher", "everything"}[(turn+i)%3]
		f.Workroom = roomOf(t, r).facts(s, favour, nil)
		add(favour+", "+r, false, f)
	}
	zigzag := roomOf(t, "zigzag machine")
	for i, house := range map[string][]map[string]float64{
		"seam": {{"french_second": 9.5}, {"french_trim": 5}, {"felled_trim": 8, "felled_second": 8}, {"mock_felled_trim": 8, "together_bound": 10}},
		"hem":  {{"baby_trim": 2.9}},
	}[n.kind] {
		if (turn+i)%2 == 0 {
			f.Workroom = zigzag.facts(s, "", house)
			add(fmt.Sprint("house ", house), true, f)
		}
	}
	f.Workroom = zigzag.facts(s, "", nil)
	g := f
	if g.Garment.Lined, g.Garment.Child = turn%2 == 0, turn%2 == 1; g.Garment.Lined {
		add("lined", false, g)
	} else {
		add("for a child", false, g)
	}
	others := []string{"silk-satin", "silk-organza", "velvet", "wool-coating", "cotton-jersey", "coated", "silk-habotai", "linen-medium"}
	for i := range 2 {
		other := others[(turn+5*i)%len(others)]
		g := f
		g.Applied = clothFacts(t, s, other)
		g.Join.OtherCloth, g.Edge.OtherCloth = true, true
		add("with "+other, false, g)
	}
	return out
}
