package seams_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
)

const (
	kentucky = "Sheer Fabrics, CT-MMB.179, Univ. of Kentucky Extension"
	koester  = "A. W. Koester, Complex Seams for Woven Fabrics, Oregon State Univ. Extension (c. 1977)"
	manitoba = "Judging Sewing, 4-H Manitoba, 2019"
	singer   = "Complete photo guide to sewing, Creative Publishing"
	guild    = "How Deep Is That Hem, American Sewing Guild, 2025"
)

// place is a cloth on a line in a room, in words.
type place struct {
	cloth, shape, room, favour string
	lined                      bool
	applied                    string
}

func (p place) facts(t testing.TB, s *seams.Shelf, shapes []shape) seams.Facts {
	t.Helper()
	i := slices.IndexFunc(shapes, func(sh shape) bool { return sh.title == p.shape })
	if i < 0 {
		t.Fatalf("no shape %q", p.shape)
	}
	f := seams.Facts{Cloth: clothFacts(t, s, p.cloth), Join: shapes[i].line, Edge: shapes[i].line,
		Workroom: roomOf(t, p.room).facts(s, p.favour, nil)}
	f.Applied = f.Cloth
	if p.applied != "" {
		f.Applied = clothFacts(t, s, p.applied)
		f.Join.OtherCloth, f.Edge.OtherCloth = true, true
	}
	f.Garment.Lined = p.lined
	return f
}

func shapesOf(t testing.TB, kind string) (work string, shapes []shape) {
	t.Helper()
	for _, n := range needs() {
		if n.kind == kind {
			return n.work, n.shapes
		}
	}
	t.Fatalf("no kind %q", kind)
	return "", nil
}

// What is chosen where the sources recommend it.
func TestChosen(t *testing.T) {
	s := load(t)
	const (
		lock       = "straight stitcher"
		zigzag     = "zigzag machine"
		overlocker = "zigzag machine and overlocker"
		four       = "straight stitcher and four-thread overlocker"
		all        = "everything"
		hands      = "hands only"
	)
	for _, row := range []struct {
		kind   string
		place  place
		want   string
		source string
	}{
		{"seam", place{cloth: "silk-georgette", shape: "straight", room: lock}, "french", "sheers, French or self-bound almost always: " + kentucky},
		{"seam", place{cloth: "silk-chiffon", shape: "straight", room: lock}, "french", oklahoma810},
		{"seam", place{cloth: "silk-georgette", shape: "straight", room: all}, "french", kentucky},
		{"seam", place{cloth: "silk-organza", shape: "straight", room: zigzag}, "french", koester},
		{"seam", place{cloth: "cotton-voile", shape: "straight", room: overlocker}, "french", conover1},
		{"seam", place{cloth: "silk-habotai", shape: "straight", room: lock}, "french", "sheer and light wovens: " + koester},
		{"seam", place{cloth: "silk-georgette", shape: "gently curved", room: lock}, "french", "straight or slightly curved: " + oklahoma810},
		{"seam", place{cloth: "silk-georgette", shape: "armhole", room: lock}, "mock-french", "mock French on curves in sheers: " + commonWay},
		{"seam", place{cloth: "cotton-voile", shape: "armhole", room: all}, "mock-french", commonWay},
		{"seam", place{cloth: "silk-organza", shape: "collar", room: zigzag}, "hairline", "sheers where French will not do, collar edges: " + oklahoma810},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: lock}, "french", "light fabric, washed often: " + oklahoma810},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: overlocker}, "plain-together-overlocked", commonWay},
		{"seam", place{cloth: "quilting-cotton", shape: "armhole", room: four}, "plain-together-overlocked", commonWay},
		{"seam", place{cloth: "linen-medium", shape: "straight", room: overlocker}, "plain-open-overlocked", "bulky fabric, pressed open: " + oklahoma810},
		{"seam", place{cloth: "wool-coating", shape: "straight", room: four}, "plain-open-overlocked", oklahoma810},
		{"seam", place{cloth: "velvet", shape: "straight", room: four}, "plain-open-overlocked", commonWay},
		{"seam", place{cloth: "silk-georgette", shape: "above a slit", room: lock}, "self-bound", "a French seam keeps one allowance to its end: " + commonWay + "; sheers French or self-bound: " + kentucky},
		{"seam", place{cloth: "silk-georgette", shape: "closing a band", room: lock}, "french", commonWay},
		{"seam", place{cloth: "wool-flannel", shape: "seen inside", room: lock}, "plain-open-bound", "unlined, medium to heavy fabric: " + commonWay},
		{"seam", place{cloth: "denim", shape: "under strain", room: lock}, "flat-felled", "work trousers: " + conover1},
		{"seam", place{cloth: "denim", shape: "under strain", room: overlocker}, "flat-felled", "sportswear: " + koester},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: overlocker, favour: "strong"}, "plain-together-overlocked", commonWay},
		{"seam", place{cloth: "linen-medium", shape: "straight", room: zigzag, favour: "strong"}, "flat-felled", koester},
		{"seam", place{cloth: "quilting-cotton", shape: "straight", room: lock, lined: true}, "plain-open-pinked", commonWay},
		{"seam", place{cloth: "quilting-cotton", shape: "straight", room: four, lined: true}, "plain-open-pinked", "a lined garment needs no neatening: " + commonWay},
		{"seam", place{cloth: "wool-flannel", shape: "straight", room: four, lined: true}, "plain-open-pinked", "a lined garment needs no neatening: " + commonWay},
		{"seam", place{cloth: "linen-medium", shape: "straight", room: lock, lined: true}, "plain-open-raw", "a lined garment needs no neatening: " + commonWay},
		{"seam", place{cloth: "wool-crepe", shape: "straight", room: overlocker, lined: true}, "plain-open-raw", "a lined garment needs no neatening: " + commonWay},
		{"seam", place{cloth: "wool-tweed", shape: "straight", room: overlocker, lined: true}, "plain-open-overlocked", "what frays at a touch is held even so: " + commonWay},
		{"seam", place{cloth: "cotton-jersey", shape: "straight", room: all}, "overlocked-4", singer},
		{"seam", place{cloth: "swimwear-knit", shape: "straight", room: four}, "overlocked-4", singer},
		{"seam", place{cloth: "cotton-jersey", shape: "straight", room: zigzag}, "narrow-zigzag", singer},
		{"seam", place{cloth: "swimwear-knit", shape: "under strain", room: zigzag}, "narrow-zigzag", singer},
		{"seam", place{cloth: "cotton-jersey", shape: "straight", room: lock}, "double-stitched", knitSeams},
		{"seam", place{cloth: "swimwear-knit", shape: "straight", room: lock}, "hand-sewn", commonWay},
		{"seam", place{cloth: "silk-satin", shape: "straight", room: hands}, "hand-sewn", commonWay},

		{"hem", place{cloth: "cotton-voile", shape: "full circle, free depth", room: lock}, "narrow-double-fold", "circle skirt, 1/4 in or rolled: " + schoolDress},
		{"hem", place{cloth: "silk-chiffon", shape: "rolled, 3 deep", room: lock}, "baby-hem", commonWay},
		{"hem", place{cloth: "silk-chiffon", shape: "rolled, 3 deep", room: hands}, "hand-rolled", alberta},
		{"hem", place{cloth: "silk-georgette", shape: "straight, 100 deep", room: lock}, "deep-double-fold", "straight skirt of sheer, up to 4 in: " + schoolDress},
		{"hem", place{cloth: "cotton-lawn", shape: "straight, 8 deep", room: zigzag}, "narrow-double-fold", guild},
		{"hem", place{cloth: "wool-flannel", shape: "straight, free depth", room: lock}, "blind-stitched-by-hand", "skirt, blind: " + guild},
		{"hem", place{cloth: "wool-flannel", shape: "straight, free depth", room: all}, "blind-stitched", guild},
		{"hem", place{cloth: "cotton-jersey", shape: "straight, free depth", room: all}, "coverstitched", commonWay},
		{"hem", place{cloth: "cotton-jersey", shape: "straight, free depth", room: zigzag}, "zigzag-hem", commonWay},
		{"hem", place{cloth: "cotton-poplin", shape: "full circle, 50 deep", room: lock}, "faced-hem", "faced hem: " + guild},

		{"binding", place{cloth: "silk-georgette", shape: "round neck", room: lock, applied: "silk-satin"}, "bias-bound-double", "sheers: narrow French binding instead of facings: " + kentucky},
		{"binding", place{cloth: "linen-medium", shape: "armhole", room: lock}, "bias-bound-single", commonWay},
		{"binding", place{cloth: "silk-georgette", shape: "round neck", room: hands}, "bias-bound-by-hand", commonWay},
		{"binding", place{cloth: "silk-satin", shape: "round neck", room: lock, favour: "neat"}, "bias-bound-double", commonWay},
		{"facing", place{cloth: "linen-medium", shape: "round neck", room: lock}, "faced-edge", goodheart},
		{"band", place{cloth: "silk-georgette", shape: "open front and neck", room: lock, applied: "silk-satin"}, "folded-band", commonWay},
		{"band", place{cloth: "silk-georgette", shape: "sleeve end", room: lock, applied: "silk-satin"}, "folded-band", commonWay},
		{"casing", place{cloth: "viscose-challis", shape: "waist", room: lock}, "elastic-casing", alberta},
		{"dart", place{cloth: "cotton-voile", shape: "dart", room: lock}, "dart-sheer", commonWay},
		{"dart", place{cloth: "cotton-poplin", shape: "dart", room: lock}, "dart", custom},
		{"staystitch", place{cloth: "silk-georgette", shape: "neck", room: lock}, "staystitch", goodheart},
	} {
		work, shapes := shapesOf(t, row.kind)
		verdicts, err := s.Weigh(work, row.kind, row.place.facts(t, s, shapes))
		if err != nil {
			t.Fatal(err)
		}
		if v := verdicts[0]; !v.Allowed() || v.Construction.Name != row.want {
			t.Errorf("%s %+v: %s (%g) is chosen, want %s (%g): %s", row.kind, row.place, v.Construction.Name, v.Score,
				row.want, verdictOn(t, s, work, row.kind, row.want, row.place.facts(t, s, shapes)).Score, row.source)
		}
	}
}

// What the sources warn against is ruled out, and the reason says why.
func TestRuledOut(t *testing.T) {
	s := load(t)
	const lock, zigzag, all = "straight stitcher", "zigzag machine", "everything"
	for _, row := range []struct {
		kind         string
		place        place
		construction string
		word         string
		source       string
	}{
		{"seam", place{cloth: "silk-georgette", shape: "armhole", room: lock}, "french", "curve", "any but straight or slightly curved: " + oklahoma810},
		{"seam", place{cloth: "wool-flannel", shape: "straight", room: lock}, "french", "ridge", "thick fabric: " + conover1},
		{"seam", place{cloth: "velvet", shape: "straight", room: lock}, "french", "pile", commonWay},
		{"seam", place{cloth: "cotton-jersey", shape: "straight", room: lock}, "french", "stretches", commonWay},
		{"seam", place{cloth: "silk-georgette", shape: "straight", room: lock, applied: "denim"}, "french", "ridge", conover1},
		{"seam", place{cloth: "denim", shape: "straight", room: lock}, "mock-french", "ridge", "heavy fabric: " + koester},
		{"seam", place{cloth: "silk-chiffon", shape: "straight", room: lock}, "flat-felled", "transparent", "transparent fabric never: " + conover1},
		{"seam", place{cloth: "denim", shape: "closely curved", room: lock}, "flat-felled", "sharp", "sharp curves: " + commonWay},
		{"seam", place{cloth: "silk-organza", shape: "under strain", room: zigzag}, "hairline", "strain", oklahoma810},
		{"seam", place{cloth: "silk-georgette", shape: "straight", room: lock}, "plain-open-pinked", "fray", "firm fabric only: " + commonWay},
		{"seam", place{cloth: "denim", shape: "straight", room: lock}, "plain-open-pinked", "fray", commonWay},
		{"seam", place{cloth: "wool-coating", shape: "straight", room: lock}, "plain-open-clean-finished", "ridge", "heavy fabric: " + oklahoma810},
		{"seam", place{cloth: "wool-flannel", shape: "straight", room: lock, favour: "quick"}, "plain-open-bound", "too long", "quick class work: " + commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: lock}, "plain-together-overlocked", "504", "nothing forms it"},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: all}, "narrow-zigzag", "knit", singer},
		{"seam", place{cloth: "swimwear-knit", shape: "straight", room: lock}, "double-stitched", "breaks", "stress seams need a stretch stitch: " + commonWay},
		{"hem", place{cloth: "cotton-poplin", shape: "full circle, 50 deep", room: all}, "deep-double-fold", "eased", "circle skirt, 1/4 in or rolled: " + schoolDress},
		{"hem", place{cloth: "cotton-poplin", shape: "full circle, 50 deep", room: all}, "hand-hemmed", "eased", schoolDress},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, 100 deep", room: all}, "narrow-double-fold", "deeper", "narrow folded hem not over 1.5 cm: " + alberta},
		{"hem", place{cloth: "silk-chiffon", shape: "straight, 100 deep", room: all}, "blind-stitched", "show", commonWay},
		{"hem", place{cloth: "denim", shape: "rolled, 3 deep", room: all}, "hand-rolled", "thickness", commonWay},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, free depth", room: all}, "coverstitched", "frays", commonWay},
		{"binding", place{cloth: "denim", shape: "round neck", room: all}, "bias-bound-double", "stiff", commonWay},
		{"binding", place{cloth: "silk-georgette", shape: "round neck", room: all, applied: "silk-satin"}, "bias-turned-inside", "seen", commonWay},
		{"dart", place{cloth: "denim", shape: "dart", room: all}, "dart-sheer", "fray", commonWay},
	} {
		work, shapes := shapesOf(t, row.kind)
		v := verdictOn(t, s, work, row.kind, row.construction, row.place.facts(t, s, shapes))
		if v.Allowed() || !strings.Contains(strings.Join(v.RuledOut, "; "), row.word) {
			t.Errorf("%s %+v: %s is ruled out by %q, want a reason with %q: %s", row.kind, row.place, row.construction, v.RuledOut, row.word, row.source)
		}
	}
}

// Lapped and bound constructions are sewn without overedge: FED-STD-751A lapped
// seams, table by needle count, and slide deck on FED-STD-751A classes.
func TestLappedAndBoundWithoutOveredge(t *testing.T) {
	s := load(t)
	for _, c := range s.Constructions {
		if c.ISO4916.Class != 2 && c.ISO4916.Class != 3 {
			continue
		}
		stitches := slices.Clone(c.Stitches)
		for _, p := range c.Passes {
			stitches = append(stitches, p.Stitch)
		}
		for _, stitch := range stitches {
			if strings.HasPrefix(stitch, "5") {
				t.Errorf("%s of class %d is sewn with %s", c.Name, c.ISO4916.Class, stitch)
			}
		}
	}
}

// Classes of ISO 4916 by the nature of the seam, as thread makers' and teachers'
// restatements of BS 3870 and ISO 4916:1991 give them.
func TestISO4916Classes(t *testing.T) {
	s := load(t)
	for class, names := range map[int][]string{
		1: {"plain-open-overlocked", "plain-together-overlocked", "french", "mock-french", "double-stitched", "overlocked-4",
			"overlocked-3", "self-bound", "welt", "gathered", "crotch", "piped"},
		2: {"lapped", "flat-felled", "tucked", "yoke"},
		3: {"bias-bound-double", "bias-bound-single", "bias-bound-by-hand", "knit-bound", "placket-bound"},
		5: {"tuck"},
		6: {"narrow-double-fold", "deep-double-fold", "blind-stitched", "coverstitched", "hand-rolled", "circular-hem", "twin-needle", "rolled-overlocked"},
		7: {"folded-band"},
		8: {"tie", "loop", "belt", "strap"},
	} {
		for _, name := range names {
			if c := constructionOf(t, s, name); c.ISO4916.Class != class {
				t.Errorf("%s is of class %d, want %d", name, c.ISO4916.Class, class)
			}
		}
	}
}

// The order of the hands in seams whose steps are printed.
func TestPublishedStepsInOrder(t *testing.T) {
	s := load(t)
	for _, row := range []struct {
		construction string
		steps        []string // act, then a word of its text
		source       string
	}{
		{"french", []string{"stitch wrong sides", "press", "trim", "turn right sides", "press", "stitch fold", "press"}, oklahoma810},
		{"mock-french", []string{"stitch right sides", "press open", "press half", "stitch folds", "press"}, commonWay},
		{"flat-felled", []string{"stitch right sides", "press", "trim underneath", "fold round", "press", "stitch fold", "press"}, washington},
		{"lapped", []string{"stitch Staystitch", "press under", "pin seam line", "stitch fold"}, washington},
		{"hairline", []string{"stitch strand", "press", "trim", "turn"}, oklahoma810},
		{"double-stitched", []string{"stitch raw edges", "stitch second", "trim"}, knitSeams},
		{"plain-open-pinked", []string{"stitch raw edges", "stitch single", "pink"}, oklahoma801},
		{"plain-open-bound", []string{"stitch raw edges", "press open", "pin strip", "stitch raw edges", "press over", "fold Wrap", "stitch groove"}, hongKong},
		{"baby-hem", []string{"stitch single", "press row", "stitch fold", "trim", "fold", "stitch inner fold"}, commonWay},
		{"faced-edge", []string{"stitch raw edges", "grade", "stitch understitch", "press"}, goodheart},
		{"self-bound", []string{"stitch raw edges", "trim allowance", "fold twice", "stitch allowances only"}, commonWay},
		{"mock-felled", []string{"stitch raw edges", "trim underneath", "stitch near", "stitch second"}, commonWay},
		{"welt", []string{"stitch raw edges", "trim underneath", "stitch welt"}, tailored},
		{"slot", []string{"baste raw edges", "press open", "pin strip", "stitch each side"}, conover1},
		{"gathered", []string{"stitch gathering rows", "gather bobbin", "stitch gathers uppermost", "press never across"}, "A. W. Koester, Pressing, Oregon State Univ. Extension (c. 1977); " + commonWay},
		{"circular-hem", []string{"hang day", "mark floor", "stitch row", "gather thread", "hand-stitch blind-stitch"}, goodheart + ", p. 459; " + texas359},
		{"shirt-collar", []string{"stitch outer and under", "grade", "turn", "press", "stitch topstitch", "stitch stands", "stitch neck edge"}, "P. Sarkar, operation breakdown of a men's formal shirt, 17 Dec 2011"},
		{"cuff", []string{"press half", "stitch edges", "stitch ends"}, "P. Sarkar, operation breakdown of a men's formal shirt, 17 Dec 2011"},
		{"patch-pocket", []string{"press mouth", "stitch mouth", "press other edges", "stitch sides"}, "P. Sarkar, operation breakdown of a men's formal shirt, 17 Dec 2011"},
	} {
		sized, err := constructionOf(t, s, row.construction).Measure(plainFacts(t, s, "silk-organza"))
		if err != nil {
			t.Fatal(err)
		}
		at := 0
		for _, step := range row.steps {
			does, word, _ := strings.Cut(step, " ")
			for at < len(sized.Passes) && (sized.Passes[at].Pass.Does != does || !strings.Contains(sized.Passes[at].Pass.Text, word)) {
				at++
			}
			if at == len(sized.Passes) {
				t.Errorf("%s: no %q after the steps before it (%s)", row.construction, step, row.source)
				break
			}
			at++
		}
	}
}

// A deep hem is allowed or refused as the depths in print would have it. The
// skirts are drafted as flat rings and cones from a waist of 28 and a hip of 40
// in, 26 in long: closed forms, our own.
func TestDeepHemsOnFlaredSkirts(t *testing.T) {
	s := load(t)
	ring := func(part float64) (hem, perInch float64) { // part of a full circle
		return 2 * math.Pi * part * (28/(2*math.Pi*part) + 26) * in, 2 * math.Pi * part
	}
	half, halfFlare := ring(0.5)
	full, fullFlare := ring(1)
	for _, row := range []struct {
		skirt             string
		hem, flare, depth float64 // mm, mm a mm, mm
		allowed           bool
		source            string
	}{
		{"gored, 65 in round, 2 in deep", 65 * in, (65 - 40) / 18.0, 2 * in, true, "The Hem of Your Dress or Skirt, L-359, Texas Agricultural Extension Service"},
		{"half circle, 1 1/2 in deep", half, halfFlare, 1.5 * in, true, "flared skirt, 1 1/2 in: " + schoolDress},
		{"full circle, 2 in deep", full, fullFlare, 2 * in, false, "circle skirt, 1/4 in or rolled: " + schoolDress},
		{"straight, 3 in deep", 40 * in, 0, 3 * in, true, "straight skirt, 2-3 in: " + guild},
	} {
		f := plainFacts(t, s, "cotton-poplin")
		f.Edge = seams.LineFacts{Length: row.hem, TightestRadius: straight, Depth: row.depth, Fullness: row.flare * row.depth}
		for _, name := range []string{"deep-double-fold", "hand-hemmed", "blind-stitched-by-hand"} {
			if v := verdictOn(t, s, "edge", "hem", name, f); v.Allowed() != row.allowed {
				t.Errorf("%s: %s allowed: %v (%q), want %v: %s", row.skirt, name, v.Allowed(), v.RuledOut, row.allowed, row.source)
			}
		}
	}
}
