package seams_test

import (
	"math"
	"strings"
	"testing"

	"bodkin/seams"
)

const (
	army       = "TM 10-8400-201-23, repair of uniforms, US Army"
	tailored   = "Tailored Seams, old dressmaking manual, c. 1911"
	retailer   = "US retailer's woven shirt construction manual"
	shirtJudge = "final inspection of men's dress shirts (quality lecture)"
	texas359   = "The Hem of Your Dress or Skirt, L-359, Texas Agricultural Extension Service"
	successful = "Successful Sewing, Goodheart-Willcox, 2013, p. 288"
	geometry   = "geometry"
)

// Sums that sources print for the further constructions.
func TestPublishedSumsOfFurtherConstructions(t *testing.T) {
	s := load(t)
	type sums = map[string]float64
	for _, row := range []struct {
		construction, title, cloth string
		house                      sums
		line                       seams.LineFacts
		want                       sums
		source                     string
	}{
		{"self-bound", "1/2 in, the other trimmed to 1/8", "cotton-voile", sums{"self_bound": in / 2, "self_bound_trim": in / 8, "self_bound_turn": 0},
			seams.LineFacts{}, sums{"allowance": in / 2, "trimmed": in / 8, "bound": in / 6}, commonWay},
		{"plain-open-folded-bound", "1/4 in from a strip of 1 in", "wool-flannel", sums{"folded_bound": in / 4, "folded_bound_turn": 0},
			seams.LineFacts{}, sums{"strip_width": in}, biasPage},
		{"mock-felled", "1/2 in", "linen-medium", sums{"mock_felled": in / 2, "mock_felled_trim": in / 8},
			seams.LineFacts{}, sums{"allowance": in / 2, "trimmed": in / 8}, "encyclopaedia article on seams; " + commonWay},
		{"welt", "1/4 in from the seam", "wool-flannel", sums{"welt": in / 4}, seams.LineFacts{}, sums{"finished": in / 4}, tailored},
		{"piped", "twice the allowance and once round the cord", "cotton-poplin", sums{"piping": 10, "piping_cord": 4},
			seams.LineFacts{}, sums{"cord": 4, "allowance": 10, "strip_width": 20 + 4*math.Pi + 2*thick(t, s, "cotton-poplin")}, geometry},
		{"yoke", "3/8 in, edge stitch under 1/16", "cotton-poplin", sums{"yoke_seam": in * 3 / 8, "yoke_edge": in / 16},
			seams.LineFacts{}, sums{"allowance": in * 3 / 8, "near": in / 16}, retailer + "; " + shirtJudge},
		{"overlocked-3", "3/8 in", "cotton-jersey", sums{"overlocked": in * 3 / 8}, seams.LineFacts{}, sums{"allowance": in * 3 / 8}, fasanella},
		{"safety-stitched", "1/2 in, 7 mm wide", "cotton-poplin", sums{"safety": in / 2, "safety_kept": 7}, seams.LineFacts{}, sums{"allowance": in / 2, "finished": 7}, fasanella + "; " + commonWay},
		{"gathered", "rows from 3/8 in", "cotton-lawn", sums{"gather_first": in * 3 / 8, "plain": in * 5 / 8}, seams.LineFacts{Eased: 500}, sums{"gather_first": in * 3 / 8, "allowance": in * 5 / 8}, commonWay},
		{"set-in-sleeve", "cap 5/8, underarm 1/4 in", "wool-flannel", sums{"plain": in * 5 / 8, "cap_row": in / 4}, seams.LineFacts{Eased: 25}, sums{"allowance": in * 5 / 8, "cap_row": in / 4}, custom},
		{"circular-hem", "row 1/4 in from the edge", "wool-flannel", sums{"ease_row": in / 4}, seams.LineFacts{Fullness: 20}, sums{"ease_row": in / 4}, goodheart},
		{"twin-needle", "1 in", "cotton-jersey", sums{"hem_knit": in, "hem_turn": 0}, seams.LineFacts{}, sums{"allowance": in, "finished": in}, commonWay},
		{"knit-band", "20 in neckline, 18 in band", "ponte", nil, seams.LineFacts{Length: 20 * in}, sums{"band_length": 18 * in}, commonWay},
		{"drawstring-casing", "1/4 in wider than the cord, first turn 5 mm", "cotton-lawn", sums{"drawcord": in / 4, "drawcord_ease": in / 4, "casing_edge": 0, "casing_turn": 0},
			seams.LineFacts{}, sums{"channel": in / 2, "turn_under": 5, "allowance": in/2 + 5}, custom + "; " + alberta},
		{"pleat", "a side pleat of 26 in takes 52 more, 78 in all", "wool-flannel", nil, seams.LineFacts{Depth: 26 * in}, sums{"taken": 52 * in}, commonWay},
		{"tuck", "twice its depth", "cotton-lawn", sums{"tuck": in / 4}, seams.LineFacts{}, sums{"taken": in / 2}, geometry},
		{"patch-pocket", "turned under 3/8 in", "linen-medium", sums{"pocket_turn": in * 3 / 8}, seams.LineFacts{}, sums{"turned": in * 3 / 8}, army},
		{"buttonhole-machine", "button 1 in wide and 1/4 thick, hole 1 3/8", "cotton-poplin", sums{"button": in, "button_thickness": in / 4, "buttonhole_ease": in / 8},
			seams.LineFacts{}, sums{"hole": in * 11 / 8}, commonWay},
		{"buttonhole-by-hand", "button 1 in wide and 1/4 thick, hole 1 1/4", "cotton-poplin", sums{"button": in, "button_thickness": in / 4, "buttonhole_ease": 0},
			seams.LineFacts{}, sums{"hole": in * 5 / 4}, commonWay},
		{"buttonhole-machine", "button 3/4 in, extension 9/16", "cotton-poplin", sums{"button": in * 3 / 4}, seams.LineFacts{}, sums{"extension": in * 9 / 16}, singer},
		{"tie", "twice the width and two seams", "cotton-lawn", sums{"tie": 20, "small_seam": 6}, seams.LineFacts{}, sums{"strip_width": 52 + 2*thick(t, s, "cotton-lawn")}, geometry},
	} {
		f := plainFacts(t, s, row.cloth)
		f.Workroom = roomOf(t, "everything").facts(s, "", row.house)
		if row.line.Length == 0 {
			row.line.Length = 1000
		}
		row.line.TightestRadius = straight
		f.Join, f.Edge = row.line, row.line
		sized, err := constructionOf(t, s, row.construction).Measure(f)
		if err != nil {
			t.Errorf("%s, %s (%s): %v", row.construction, row.title, row.source, err)
			continue
		}
		for name, want := range row.want {
			if got, ok := sized.Size(name); !ok || math.Abs(got-want) > 1e-9 {
				t.Errorf("%s, %s (%s): %s is %.4f mm, want %.4f", row.construction, row.title, row.source, name, got, want)
			}
		}
	}
}

func thick(t testing.TB, s *seams.Shelf, cloth string) float64 {
	return clothFacts(t, s, cloth).Thickness
}

// What we take where nobody says otherwise lies within what sources print.
func TestFurtherDefaultsAreWithinPublishedRanges(t *testing.T) {
	s := load(t)
	for _, row := range []struct {
		construction, cloth, size string
		least, most               float64
		source                    string
	}{
		{"self-bound", "cotton-voile", "allowance", in/2 - 0.3, in * 5 / 8, "1/2 to 5/8 in: " + commonWay},
		{"overlocked-3", "cotton-jersey", "allowance", in / 4, in/2 + 0.1, fasanella},
		{"crotch", "denim", "kept", in / 8, in / 4, "seat curves to 1/4 in: " + goodheart},
		{"set-in-sleeve", "wool-flannel", "kept", in / 8, in / 4, custom},
		{"rolled-overlocked", "silk-chiffon", "wide", 0, 3, "rolled hem not over 3 mm: " + alberta},
		{"rolled-by-foot", "silk-habotai", "finished", 0, 3, "rolled hem not over 3 mm: " + alberta},
		{"two-row-knit", "cotton-jersey", "finished", in - 0.5, in, "sleeve of a knit tee, 1 in: " + commonWay},
		{"two-row-knit", "cotton-jersey", "apart", in / 8, in / 4, "second row 1/8 to 1/4 in away: " + commonWay},
		{"plain-together-pinked", "quilting-cotton", "row", in/4 - 0.5, in / 4, "row 1/4 in from the edge: " + oklahoma801},
		{"plain-together-bound", "cotton-poplin", "bound", in/4 - 0.5, in / 4, "strip stitched 1/4 in: " + commonWay},
		{"twin-needle", "cotton-jersey", "finished", 10, 32, "pullover, 1-3.2 cm: " + guild},
		{"circular-hem", "wool-flannel", "finished", 6, 51, "from a narrow hem up to 2 in: " + texas359},
		{"drawstring-casing", "cotton-lawn", "channel", 6 + in/4 - 0.5, 6 + in/4 + 0.5, "1/4 in wider than the cord: " + custom},
		{"waistband", "cotton-poplin", "finished", 40, 50, "waistband 4-5 cm: " + alberta},
		{"buttonhole-machine", "cotton-poplin", "past", 3, in / 8, "1/8 in past the centre line: " + singer},
		{"gathered", "cotton-lawn", "gather_length", 3, 4, "gathering stitch 3-4 mm: " + commonWay},
		{"bias-faced", "cotton-lawn", "graded", in / 8, in / 4, "graded to 1/4 in and less: " + goodheart},
		{"knit-band", "cotton-rib", "band_length", 660, 900, "rib 0.66-0.85, knit 0.85-0.9 of the edge: " + memory + "; " + commonWay},
	} {
		f := plainFacts(t, s, row.cloth)
		f.Join.Eased, f.Edge.Fullness = 25, 20
		sized, err := constructionOf(t, s, row.construction).Measure(f)
		if err != nil {
			t.Error(err)
			continue
		}
		if got, ok := sized.Size(row.size); !ok || got < row.least-1e-9 || got > row.most+1e-9 {
			t.Errorf("%s in %s: %s is %.2f mm, want %.2f to %.2f: %s", row.construction, row.cloth, row.size, got, row.least, row.most, row.source)
		}
	}
}

// What the further constructions are taken for, and that they leave alone what
// others do better.
func TestFurtherChosen(t *testing.T) {
	s := load(t)
	const (
		lock, zigzag, all = "straight stitcher", "zigzag machine", "everything"
		overlocker, hands = "zigzag machine and overlocker", "hands only"
	)
	for _, row := range []struct {
		kind   string
		place  place
		want   string
		source string
	}{
		{"seam", place{cloth: "cotton-jersey", shape: "shoulder", room: all}, "taped", "shoulders of knits: " + successful},
		{"seam", place{cloth: "ponte", shape: "shoulder", room: zigzag}, "taped", successful},
		{"seam", place{cloth: "cotton-jersey", shape: "raglan", room: all}, "overlocked-4", singer},
		{"seam", place{cloth: "cotton-poplin", shape: "gathered", room: lock}, "gathered", commonWay},
		{"seam", place{cloth: "viscose-challis", shape: "gathered", room: overlocker}, "gathered", commonWay},
		{"seam", place{cloth: "silk-georgette", shape: "gathered", room: lock}, "french", "sheers, French or self-bound almost always: " + kentucky},
		{"seam", place{cloth: "silk-organza", shape: "gathered", room: overlocker}, "self-bound", kentucky},
		{"seam", place{cloth: "wool-flannel", shape: "sleeve cap", room: lock}, "set-in-sleeve", custom},
		{"seam", place{cloth: "cotton-poplin", shape: "sleeve cap", room: overlocker}, "set-in-sleeve", custom},
		{"seam", place{cloth: "silk-georgette", shape: "sleeve cap", room: lock}, "mock-french", "mock French on curves in sheers: " + commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "armhole", room: overlocker}, "plain-together-overlocked", commonWay},
		{"seam", place{cloth: "denim", shape: "crotch", room: zigzag}, "crotch", "seat curves trimmed: " + goodheart},
		{"seam", place{cloth: "cotton-jersey", shape: "crotch", room: all}, "overlocked-4", singer},
		{"seam", place{cloth: "denim", shape: "seat, straight", room: lock}, "flat-felled", "work trousers: " + conover1},
		{"seam", place{cloth: "wool-flannel", shape: "eased on a thread", room: lock}, "ease-stitched", "steam-shrunk: " + goodheart},
		{"seam", place{cloth: "cotton-poplin", shape: "eased", room: overlocker}, "plain-together-overlocked", commonWay},
		{"seam", place{cloth: "faux-leather", shape: "straight", room: lock}, "plain-open-topstitched", commonWay},
		{"seam", place{cloth: "faux-leather", shape: "collar", room: zigzag}, "lapped-raw", "lapped, raw edges: FED-STD-751A lapped seams, table by needle count"},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: "factory"}, "safety-stitched", fasanella},

		{"hem", place{cloth: "faux-leather", shape: "straight, free depth", room: lock}, "topstitched-single", commonWay},
		{"hem", place{cloth: "wool-flannel", shape: "flared, free depth", room: lock}, "circular-hem", goodheart + ", p. 459"},
		{"hem", place{cloth: "cotton-lawn", shape: "full circle, free depth", room: overlocker}, "narrow-double-fold", "circle skirt, 1/4 in or rolled: " + schoolDress},
		{"hem", place{cloth: "cotton-lawn", shape: "full circle, free depth", room: all, favour: "quick"}, "rolled-overlocked", schoolDress + "; " + texas359},
		{"hem", place{cloth: "silk-chiffon", shape: "rolled, 3 deep", room: all}, "baby-hem", commonWay},
		{"hem", place{cloth: "cotton-jersey", shape: "straight, free depth", room: all, favour: "neat"}, "coverstitched", commonWay},
		{"hem", place{cloth: "cotton-jersey", shape: "straight, free depth", room: zigzag, favour: "neat"}, "twin-needle", commonWay},

		{"binding", place{cloth: "cotton-jersey", shape: "round neck", room: zigzag}, "knit-bound", commonWay},
		{"binding", place{cloth: "cotton-jersey", shape: "armhole", room: hands}, "knit-bound", commonWay},
		{"band", place{cloth: "cotton-jersey", shape: "round neck", room: all, applied: "cotton-rib"}, "knit-band", "rib for neck and cuffs: " + commonWay},
		{"band", place{cloth: "cotton-jersey", shape: "sleeve end", room: hands, applied: "cotton-rib"}, "knit-band", commonWay},
		{"facing", place{cloth: "cotton-poplin", shape: "straight", room: lock}, "self-faced", commonWay},
		{"facing", place{cloth: "cotton-poplin", shape: "round neck", room: lock}, "faced-edge", goodheart},
		{"facing", place{cloth: "cotton-poplin", shape: "round neck", room: lock, favour: "quick"}, "bias-faced", commonWay},
		{"casing", place{cloth: "cotton-lawn", shape: "no elastic named", room: lock}, "elastic-casing", commonWay},

		{"zip", place{cloth: "cotton-poplin", shape: "zip", room: lock}, "zip-lapped", commonWay},
		{"zip", place{cloth: "wool-coating", shape: "zip", room: lock}, "zip-centred", commonWay},
		{"zip", place{cloth: "velvet", shape: "zip", room: zigzag}, "zip-centred", "too thick for a coil: " + commonWay},
		{"zip", place{cloth: "cotton-corduroy", shape: "zip", room: zigzag}, "zip-invisible", commonWay},
		{"zip", place{cloth: "silk-organza", shape: "zip", room: lock}, "zip-invisible", commonWay},
		{"zip", place{cloth: "cotton-poplin", shape: "zip under strain", room: hands}, "zip-lapped", commonWay},
		{"placket", place{cloth: "cotton-voile", shape: "placket", room: lock}, "placket-bound", commonWay},
		{"placket", place{cloth: "wool-flannel", shape: "placket", room: lock}, "placket-faced", commonWay},
		{"buttonhole", place{cloth: "cotton-poplin", shape: "buttonhole", room: zigzag}, "buttonhole-machine", singer},
		{"buttonhole", place{cloth: "cotton-poplin", shape: "buttonhole", room: lock}, "buttonhole-by-hand", commonWay},
		{"buttonhole", place{cloth: "velvet", shape: "buttonhole", room: zigzag}, "buttonhole-by-hand", commonWay},
		{"lining", place{cloth: "wool-flannel", shape: "lining", room: lock}, "lining-felled", commonWay},
		{"lining", place{cloth: "wool-flannel", shape: "lining", room: lock, favour: "quick"}, "lining-bagged", commonWay},
		{"lining", place{cloth: "silk-satin", shape: "lining", room: hands}, "lining-felled", commonWay},
	} {
		work, shapes := shapesOf(t, row.kind)
		facts := row.place.facts(t, s, shapes)
		verdicts, err := s.Weigh(work, row.kind, facts)
		if err != nil {
			t.Fatal(err)
		}
		if v := verdicts[0]; !v.Allowed() || v.Construction.Name != row.want {
			t.Errorf("%s %+v: %s (%g) is chosen, want %s (%g): %s", row.kind, row.place, v.Construction.Name, v.Score,
				row.want, verdictOn(t, s, work, row.kind, row.want, facts).Score, row.source)
		}
	}
}

// What the sources warn against is ruled out, and the reason says why.
func TestFurtherRuledOut(t *testing.T) {
	s := load(t)
	const lock, zigzag, all = "straight stitcher", "zigzag machine", "everything"
	for _, row := range []struct {
		kind         string
		place        place
		construction string
		word         string
		source       string
	}{
		{"seam", place{cloth: "denim", shape: "straight", room: lock}, "self-bound", "ridge", "heavy fabric: " + koester},
		{"seam", place{cloth: "silk-georgette", shape: "armhole", room: lock}, "self-bound", "curve", commonWay},
		{"seam", place{cloth: "silk-chiffon", shape: "straight", room: lock}, "mock-felled", "transparent", "transparent fabric never: " + conover1},
		{"seam", place{cloth: "wool-flannel", shape: "straight", room: lock, favour: "quick"}, "plain-open-folded-bound", "too long", "quick class work: " + commonWay},
		{"seam", place{cloth: "swimwear-knit", shape: "under strain", room: all}, "taped", "stretch", "not where stretch is wanted: " + successful},
		{"seam", place{cloth: "cotton-poplin", shape: "shoulder", room: all}, "taped", "staystitch", commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: all}, "overlocked-3", "grins", "three threads, weaker: " + commonWay},
		{"seam", place{cloth: "swimwear-knit", shape: "under strain", room: all}, "overlocked-3", "weaker", commonWay},
		{"seam", place{cloth: "swimwear-knit", shape: "straight", room: zigzag}, "straight-and-zigzag", "breaks", "stress seams need a stretch stitch: " + commonWay},
		{"seam", place{cloth: "velvet", shape: "gathered", room: all}, "gathered", "crushed", commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: all}, "gathered", "eased", commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "armhole", room: all}, "set-in-sleeve", "cap", commonWay},
		{"seam", place{cloth: "silk-organza", shape: "straight", room: all}, "welt", "shows through", commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "armhole", room: all}, "slot", "straight seam", commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: all}, "lapped-raw", "frays", commonWay},
		{"seam", place{cloth: "silk-chiffon", shape: "straight", room: "factory"}, "safety-stitched", "ladder", commonWay},
		{"hem", place{cloth: "linen-medium", shape: "straight, free depth", room: all}, "topstitched-single", "frays", commonWay},
		{"hem", place{cloth: "cotton-poplin", shape: "full circle, 50 deep", room: all}, "circular-hem", "too full", "circle skirt, 1/4 in or rolled: " + schoolDress},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, 100 deep", room: all}, "rolled-by-foot", "deeper", alberta},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, free depth", room: all}, "two-row-knit", "frays", commonWay},
		{"seam", place{cloth: "cotton-poplin", shape: "straight", room: all}, "lace-applique", "motifs", commonWay},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, 100 deep", room: all}, "rolled-overlocked", "deeper", alberta},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, free depth", room: all}, "lettuce", "stretches", commonWay},
		{"hem", place{cloth: "cotton-poplin", shape: "straight, free depth", room: all}, "twin-needle", "frays", commonWay},
		{"binding", place{cloth: "cotton-poplin", shape: "armhole", room: all}, "knit-bound", "bias", commonWay},
		{"band", place{cloth: "cotton-jersey", shape: "round neck", room: all, applied: "cotton-poplin"}, "knit-band", "stretch", commonWay},
		{"facing", place{cloth: "cotton-poplin", shape: "round neck", room: all}, "self-faced", "straight", commonWay},
		{"facing", place{cloth: "linen-medium", shape: "round neck", room: all, applied: "velvet"}, "bias-faced", "ridge", commonWay},
		{"zip", place{cloth: "velvet", shape: "zip", room: all}, "zip-lapped", "crushes", commonWay},
		{"placket", place{cloth: "wool-coating", shape: "placket", room: all}, "placket-bound", "thick", commonWay},
	} {
		work, shapes := shapesOf(t, row.kind)
		v := verdictOn(t, s, work, row.kind, row.construction, row.place.facts(t, s, shapes))
		if v.Allowed() || !strings.Contains(strings.Join(v.RuledOut, "; "), row.word) {
			t.Errorf("%s %+v: %s is ruled out by %q, want a reason with %q: %s", row.kind, row.place, row.construction, v.RuledOut, row.word, row.source)
		}
	}
}

// A cord in a child's garment is refused and said to be dangerous; a tie is
// warned of. EN 14682 limits both: from memory.
func TestCordsOnChildrensGarments(t *testing.T) {
	s := load(t)
	for _, cloth := range s.Cloths {
		f := plainFacts(t, s, cloth.Name)
		f.Garment.Child = true
		v := verdictOn(t, s, "edge", "casing", "drawstring-casing", f)
		if !strings.Contains(strings.Join(v.RuledOut, "; "), "strangle") {
			t.Errorf("%s: a drawstring on a child's garment is ruled out by %q", cloth.Name, v.RuledOut)
		}
		warned := false
		for _, r := range verdictOn(t, s, "detail", "tie", "tie", f).Against {
			warned = warned || strings.Contains(r.Because, "strangle")
		}
		if !warned {
			t.Errorf("%s: nothing warns of a tie on a child's garment", cloth.Name)
		}
	}
}
