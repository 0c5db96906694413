package seams_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bodkin/seams"
)

// in is an inch in mm, exactly.
const in = 25.4

// Titles of published sources, as the figures below name them.
const (
	oklahoma810 = "4-H Fabrics & Fashions Construction Cards, Intermediate, No. 810, Oklahoma Cooperative Extension"
	oklahoma801 = "Sample Techniques No. 801, Seam finishes, Oklahoma Cooperative Extension"
	sewtionary  = "T. St. Germaine, The Sewtionary"
	utah        = "Sewing Technique: French Seam, Utah State Univ. Extension"
	conover1    = "I. D. Conover, A Complete Course in Dressmaking, vol. 1, Clode, 1921"
	conover2    = "I. D. Conover, A Complete Course in Dressmaking, vol. 2, Clode, 1921-22"
	domesticArt = "Text-Book on Domestic Art (public domain)"
	washington  = "Costume text ch. 21, Central Washington University"
	fasanella   = "K. Fasanella, The Rules on Seam Allowances"
	hongKong    = "encyclopaedia article on the Hong Kong seam, citing Shaeffer 2001 and Reader's Digest 1997"
	knitSeams   = "knit seams chapter, Creative Publishing style book (title not shown)"
	schoolDress = "Theta Johnson, It's Fun to Sew: A Cotton School Dress"
	alberta     = "Alberta distance-learning sewing pages"
	goodheart   = "Apparel: Design, Textiles & Construction, Goodheart-Willcox, 2012"
	custom      = "Standards of Quality for Custom Clothing, Association of Sewing and Design Professionals"
	finishing   = "Finishing methods in sewing (public web page)"
	biasPage    = "public web page on bias binding (seen)"
	commonWay   = "common practice, no source"
	memory      = "from memory"
)

// Sums that sources print, reached through house figures; the turn of the cloth
// is set to nothing, because the sources leave it out.
func TestPublishedSums(t *testing.T) {
	s := load(t)
	type sums = map[string]float64
	for _, row := range []struct {
		construction, title string
		house               sums
		edge                seams.LineFacts
		want                sums
		source              string
	}{
		{"french", "3/8 and 1/4 in", sums{"french_first": in * 3 / 8, "french_trim": in / 8, "french_second": in / 4, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 5 / 8, "finished": in / 4, "trim": in / 8}, oklahoma810},
		{"french", "1/4 and 3/8 in", sums{"french_first": in / 4, "french_trim": in / 8, "french_second": in * 3 / 8, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 5 / 8, "finished": in * 3 / 8}, sewtionary},
		{"french", "1/2 in in all", sums{"french_first": in / 4, "french_trim": in / 8, "french_second": in / 4, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": in / 2, "finished": in / 4}, commonWay},
		{"french", "3/4 in in all", sums{"french_first": in * 3 / 8, "french_trim": in / 8, "french_second": in * 3 / 8, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 3 / 4, "finished": in * 3 / 8}, utah},
		{"french", "1921", sums{"french_first": in / 8, "french_trim": in / 16, "french_second": in / 4, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 3 / 8, "finished": in / 4}, conover1},
		{"french", "half and half", sums{"french_first": 7.5, "french_trim": 5, "french_second": 7.5, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": 15, "trim": 5}, finishing},
		{"french", "skirt, first line 3/8 in outside the traced one", sums{"french_first": in * 3 / 8, "french_trim": in / 8, "french_second": in * 3 / 8, "french_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 3 / 4}, domesticArt},
		{"mock-french", "5/8 in folded in half", sums{"mock_french": in * 5 / 8},
			seams.LineFacts{}, sums{"allowance": in * 5 / 8, "finished": in * 5 / 16}, commonWay},
		{"flat-felled", "5/8 in, under one trimmed to 1/4", sums{"felled": in * 5 / 8, "felled_trim": in / 4, "felled_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 5 / 8, "trim": in / 4, "first": in*5/8 - 8}, washington},
		{"flat-felled", "trimmed to 1/8, stitched 1/4 in from the seam", sums{"felled": in * 5 / 8, "felled_trim": in / 8, "felled_second": in / 4, "felled_turn": 0},
			seams.LineFacts{}, sums{"finished": in / 4, "first": in * 3 / 8}, commonWay},
		{"flat-felled", "15 mm, 6 mm trimmed, 6 mm folded", sums{"felled_trim": 6, "felled_second": 9, "felled_turn": 0},
			seams.LineFacts{}, sums{"allowance": 15, "first": 6}, commonWay},
		{"flat-felled", "under one trimmed to half, 3 mm of the upper folded in", sums{"felled": 10, "felled_trim": 5, "felled_second": 7, "felled_turn": 0},
			seams.LineFacts{}, sums{"first": 3}, finishing},
		{"plain-open-clean-finished", "5/8 in, turned 1/4", sums{"plain": in * 5 / 8, "clean_turn": in / 4},
			seams.LineFacts{}, sums{"allowance": in * 5 / 8, "finished": in * 3 / 8}, oklahoma810},
		{"plain-open-pinked", "row at 1/4 in", sums{"plain": in * 5 / 8, "pinked_row": in / 4},
			seams.LineFacts{}, sums{"row": in / 4}, oklahoma801},
		{"plain-open-bound", "strip allowance and 1/4 in, row at 1/8", sums{"plain": in * 5 / 8, "bound_extra": in / 4, "bound_row": in / 8},
			seams.LineFacts{}, sums{"strip_width": in * 7 / 8, "row": in / 8}, hongKong},
		{"plain-together-overlocked", "3/8 in", sums{"overlocked": in * 3 / 8, "overlocked_kept": in / 4},
			seams.LineFacts{}, sums{"allowance": in * 3 / 8, "finished": in / 4}, fasanella},
		{"double-stitched", "rows 1/4 in apart", sums{"double_row": in / 4},
			seams.LineFacts{}, sums{"row": in / 4}, knitSeams},
		{"hairline", "trimmed to 1/8 in", sums{"hairline_trim": in / 8},
			seams.LineFacts{}, sums{"finished": in / 8}, oklahoma810},
		{"staystitch", "1/8 in outside the seam line", sums{"staystitch": in / 8},
			seams.LineFacts{}, sums{"outside": in / 8}, goodheart},
		{"narrow-double-fold", "1/4 in folded twice", sums{"hem_narrow": in / 4, "hem_narrow_turn": in / 4, "hem_turn": 0},
			seams.LineFacts{}, sums{"allowance": in / 2, "finished": in / 4}, schoolDress},
		{"narrow-by-hand", "1/16, then 1/8 in", sums{"hem_narrow": in / 8, "hem_narrow_turn": in / 16, "hem_turn": 0},
			seams.LineFacts{}, sums{"allowance": in * 3 / 16, "turn_under": in / 16}, conover2},
		{"baby-hem", "1/2 in, then 1/8 in from the fold", sums{"baby_first": in / 2, "baby_row": in / 8, "baby_finished": in * 3 / 16, "hem_turn": 0},
			seams.LineFacts{}, sums{"first": in / 2, "row": in / 8, "allowance": in * 11 / 16}, commonWay},
		{"coverstitched", "1 in", sums{"hem_knit": in, "hem_turn": 0},
			seams.LineFacts{}, sums{"allowance": in, "finished": in}, commonWay},
		{"deep-double-fold", "4 in, 3/8 turned under", sums{"hem_turn_under": in * 3 / 8, "hem_turn": 0},
			seams.LineFacts{Depth: 4 * in}, sums{"allowance": in * 35 / 8, "finished": 4 * in}, commonWay},
		{"bias-bound-single", "four times 1/4 in", sums{"binding_single_turn": 0},
			seams.LineFacts{Depth: in / 4}, sums{"strip_width": in, "allowance": 0}, biasPage},
		{"bias-bound-single", "four times 1/2 in", sums{"binding_single_turn": 0},
			seams.LineFacts{Depth: in / 2}, sums{"strip_width": 2 * in}, commonWay},
		{"bias-bound-double", "six times 1/4 in", sums{"binding_double_turn": 0},
			seams.LineFacts{Depth: in / 4}, sums{"strip_width": in * 3 / 2}, memory},
		{"folded-band", "5 in folded in half", sums{"band_strip": 5 * in, "band_seam": 0, "band_turn": 0},
			seams.LineFacts{}, sums{"strip_width": 5 * in, "finished": in * 5 / 2}, commonWay},
		{"folded-band", "5 in with 3/8 in seams", sums{"band_strip": 5 * in, "band_seam": in * 3 / 8, "band_turn": 0},
			seams.LineFacts{}, sums{"strip_width": 5 * in, "finished": in * 17 / 8, "allowance": in * 3 / 8}, commonWay},
		{"elastic-casing", "5 mm, then elastic and 2 mm", sums{"casing_turn_under": 5, "casing_ease": 2, "casing_edge": 0, "casing_turn": 0},
			seams.LineFacts{Elastic: 20, Grip: 700}, sums{"depth": 22, "allowance": 27}, alberta},
		{"elastic-casing", "1/8 in wider than the elastic", sums{"casing_ease": in / 8},
			seams.LineFacts{Elastic: in, Grip: 700}, sums{"channel": in * 9 / 8}, custom},
		{"elastic-casing", "waist 30 in, elastic 28", sums{"elastic_draw": 2 * in, "elastic_lap": 0},
			seams.LineFacts{Elastic: in, Grip: 30 * in}, sums{"elastic_length": 28 * in}, commonWay},
		{"faced-edge", "graded to 1/4 in", sums{"graded": in / 4},
			seams.LineFacts{}, sums{"graded": in / 4}, goodheart},
	} {
		f := plainFacts(t, s, "cotton-lawn")
		f.Workroom = roomOf(t, "everything").facts(s, "", row.house)
		row.edge.Length, row.edge.TightestRadius = 1000, straight
		f.Edge = row.edge
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

// What we take where nobody says otherwise lies within what sources print.
func TestDefaultsAreWithinPublishedRanges(t *testing.T) {
	s := load(t)
	for _, row := range []struct {
		construction, cloth, size string
		edge                      seams.LineFacts
		least, most               float64
		source                    string
	}{
		{"french", "silk-georgette", "finished", seams.LineFacts{}, 0, in / 4, "1/4 in or less for sheers: " + commonWay},
		{"french", "silk-georgette", "trim", seams.LineFacts{}, 0, in / 8, oklahoma810},
		{"french", "silk-georgette", "allowance", seams.LineFacts{}, in * 3 / 8, in / 2, conover1 + "; " + commonWay},
		{"mock-french", "cotton-voile", "finished", seams.LineFacts{}, 7, 8, commonWay},
		{"plain-together-overlocked", "cotton-poplin", "allowance", seams.LineFacts{}, in / 4, in/2 + 0.1, fasanella},
		{"narrow-double-fold", "cotton-lawn", "finished", seams.LineFacts{}, 6, 13, "blouse tucked in, 6-13 mm: How Deep Is That Hem, American Sewing Guild, 2025"},
		{"narrow-double-fold", "linen-medium", "finished", seams.LineFacts{}, 10, 20, "blouse worn out, 1-2 cm: How Deep Is That Hem, American Sewing Guild, 2025"},
		{"narrow-double-fold", "denim", "finished", seams.LineFacts{}, 0, 15, "narrow folded hem, total not over 1.5 cm: " + alberta},
		{"baby-hem", "silk-chiffon", "finished", seams.LineFacts{}, 1.5, 3.2, "1/16 to 1/8 in: " + commonWay},
		{"hand-rolled", "silk-chiffon", "finished", seams.LineFacts{}, 0, 3, "rolled hem not over 3 mm: " + alberta},
		{"hand-rolled", "silk-chiffon", "turned", seams.LineFacts{}, 0, 2, "first turning at most 2 mm: Th. de Dillmont, Encyclopedia of Needlework (public domain)"},
		{"deep-double-fold", "linen-medium", "finished", seams.LineFacts{}, 38, 51, "dress, 1 1/2 to 2 in: How Deep Is That Hem, American Sewing Guild, 2025"},
		{"deep-double-fold", "linen-medium", "turn_under", seams.LineFacts{}, in * 3 / 8, 2 * in, "hem of 1/2 in or more, at least 3/8 in turned under: US retailer's woven shirt construction manual"},
		{"blind-stitched", "wool-flannel", "finished", seams.LineFacts{}, 38, 51, "jacket and coat, 1 1/2 to 2 in: How Deep Is That Hem, American Sewing Guild, 2025"},
		{"hand-hemmed", "cotton-lawn", "finished", seams.LineFacts{}, 38, 51, "dress, 1 1/2 to 2 in: How Deep Is That Hem, American Sewing Guild, 2025"},
		{"coverstitched", "cotton-jersey", "finished", seams.LineFacts{}, 10, 32, "pullover, 1-3.2 cm: How Deep Is That Hem, American Sewing Guild, 2025"},
		{"elastic-casing", "cotton-lawn", "channel", seams.LineFacts{Elastic: 20, Grip: 700}, 22, 20 + in/8, alberta + "; " + custom},
		{"faced-edge", "cotton-lawn", "graded", seams.LineFacts{}, in / 8, in / 4, goodheart},
		{"staystitch", "cotton-lawn", "outside", seams.LineFacts{}, 0, in / 8, goodheart},
		{"narrow-zigzag", "cotton-jersey", "wide", seams.LineFacts{}, 0.5, 0.5, "Complete photo guide to sewing, Creative Publishing"},
		{"zigzag-hem", "cotton-jersey", "wide", seams.LineFacts{}, 3.5, 3.5, commonWay},
	} {
		f := plainFacts(t, s, row.cloth)
		row.edge.Length, row.edge.TightestRadius = 1000, straight
		f.Edge = row.edge
		sized, err := constructionOf(t, s, row.construction).Measure(f)
		if err != nil {
			t.Errorf("%s in %s (%s): %v", row.construction, row.cloth, row.source, err)
			continue
		}
		if got, ok := sized.Size(row.size); !ok || got < row.least-1e-9 || got > row.most+1e-9 {
			t.Errorf("%s in %s (%s): %s is %.3f mm, not %.3f to %.3f", row.construction, row.cloth, row.source, row.size, got, row.least, row.most)
		}
	}
}

// Stitch lengths that sources print for a row.
func TestPublishedStitchLengths(t *testing.T) {
	s := load(t)
	for _, row := range []struct {
		construction, stitch string
		mm                   float64
		source               string
	}{
		{"narrow-zigzag", "304", 2.5, "Complete photo guide to sewing, Creative Publishing"},
		{"zigzag-hem", "304", 1.4, "zigzag 3.5 wide, 1.4 long: " + commonWay},
		{"baby-hem", "301", 2, "2 mm stitch: " + commonWay},
	} {
		f := plainFacts(t, s, "cotton-lawn")
		sized, err := constructionOf(t, s, row.construction).Measure(f)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, p := range sized.Passes {
			if p.Pass.Stitch == row.stitch && p.Pass.Does == "stitch" {
				found = true
				if p.StitchMM != row.mm {
					t.Errorf("%s: stitch length %.2f, want %.2f (%s)", row.construction, p.StitchMM, row.mm, row.source)
				}
			}
		}
		if !found {
			t.Errorf("%s has no row of %s", row.construction, row.stitch)
		}
	}
}

// The charmeuse seam of common practice, first 3/8 in, trimmed to a scant 1/4,
// second 1/4, sits on the limit: with a full 1/4 in it is refused, with a scant
// one it is done and warned of.
func TestTrimOnTheLimit(t *testing.T) {
	s := load(t)
	french := constructionOf(t, s, "french")
	f := plainFacts(t, s, "silk-satin")
	house := map[string]float64{"french_first": in * 3 / 8, "french_second": in / 4, "french_trim": in / 4, "french_turn": 0}
	f.Workroom = roomOf(t, "straight stitcher").facts(s, "", house)
	if _, err := french.Measure(f); err == nil || !strings.Contains(err.Error(), "trimmed") {
		t.Errorf("trimmed to the second row: error %v, want one that names the trimmed edges", err)
	}
	house["french_trim"] = in/4 - 0.4
	f.Workroom = roomOf(t, "straight stitcher").facts(s, "", house)
	if _, err := french.Measure(f); err != nil {
		t.Errorf("trimmed to a scant 1/4 in: %v", err)
	}
	warned := false
	for _, r := range verdictOn(t, s, "join", "seam", "french", f).Against {
		warned = warned || strings.Contains(r.Because, "near the second row")
	}
	if !warned {
		t.Error("nothing warns that the trimmed edges come near the second row")
	}
}

func verdictOn(t testing.TB, s *seams.Shelf, work, kind, name string, f seams.Facts) seams.Verdict {
	t.Helper()
	verdicts, err := s.Weigh(work, kind, f)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range verdicts {
		if v.Construction.Name == name {
			return v
		}
	}
	t.Fatalf("no %s among the ways to sew a %s", name, kind)
	return seams.Verdict{}
}

// An enclosed seam closes whatever the house figures: first, second and turn
// are the allowance, and it is refused exactly when the trimmed edges would
// reach the second row.
func TestEnclosingConstructionsClose(t *testing.T) {
	s := load(t)
	rapid.Check(t, func(r *rapid.T) {
		mm := rapid.Float64Range(1, 15)
		first, second, trim := mm.Draw(r, "first"), mm.Draw(r, "second"), mm.Draw(r, "trim")
		f := plainFacts(t, s, rapid.SampledFrom([]string{"silk-organza", "cotton-lawn", "linen-medium"}).Draw(r, "cloth"))
		for _, row := range []struct {
			name  string
			house map[string]float64
		}{
			{"french", map[string]float64{"french_first": first, "french_second": second, "french_trim": trim}},
			{"baby-hem", map[string]float64{"baby_first": first, "baby_finished": second, "baby_trim": trim}},
			{"flat-felled", map[string]float64{"felled": first + second + 1, "felled_second": second, "felled_trim": trim}},
		} {
			f.Workroom = roomOf(t, "everything").facts(s, "", row.house)
			sized, err := constructionOf(t, s, row.name).Measure(f)
			if (err != nil) != (trim >= second) {
				r.Fatalf("%s with trim %g and second %g: %v", row.name, trim, second, err)
			}
			if err == nil && math.Abs(sum(sized, "first", "second", "turn")-sized.Allowance) > 1e-9 {
				r.Fatalf("%s: %v do not make the allowance %g", row.name, sized.Sizes, sized.Allowance)
			}
		}
	})
}

// Turned hems, casings, bindings and bands use up what they are cut with.
func TestCutWidthsAddUp(t *testing.T) {
	s := load(t)
	rapid.Check(t, func(r *rapid.T) {
		f := plainFacts(t, s, rapid.SampledFrom([]string{"silk-organza", "cotton-lawn", "linen-medium", "wool-flannel"}).Draw(r, "cloth"))
		f.Edge.Depth = rapid.Float64Range(5, 120).Draw(r, "depth")
		measure := func(name string) seams.Sized {
			sized, err := constructionOf(t, s, name).Measure(f)
			if err != nil {
				r.Fatal(err)
			}
			return sized
		}
		for _, name := range []string{"narrow-double-fold", "narrow-by-hand", "deep-double-fold", "hand-hemmed", "elastic-casing", "elastic-casing-by-hand"} {
			if z := measure(name); math.Abs(sum(z, "depth", "turn_under", "turn")-z.Allowance) > 1e-9 {
				r.Fatalf("%s: %v do not make the allowance %g", name, z.Sizes, z.Allowance)
			}
		}
		for name, times := range map[string]float64{"bias-bound-single": 4, "bias-bound-double": 6, "bias-bound-by-hand": 4} {
			if z := measure(name); math.Abs(times*z.Finished+sum(z, "turn")-z.Strip.Width) > 1e-9 {
				r.Fatalf("%s: strip %g for a finished width of %g", name, z.Strip.Width, z.Finished)
			}
		}
		for _, name := range []string{"folded-band", "folded-band-by-hand"} {
			if z := measure(name); math.Abs(2*z.Finished+2*z.Allowance+sum(z, "turn")-z.Strip.Width) > 1e-9 || z.Finished != f.Edge.Depth {
				r.Fatalf("%s: strip %g for a finished width of %g", name, z.Strip.Width, z.Finished)
			}
		}
		for _, name := range []string{"faced-hem", "faced-hem-by-hand"} {
			if z := measure(name); math.Abs(sum(z, "seam", "depth", "turn_under")-z.Strip.Width) > 1e-9 {
				r.Fatalf("%s: facing %g for a depth of %g", name, z.Strip.Width, z.Finished)
			}
		}
	})
}

func sum(z seams.Sized, names ...string) float64 {
	total := 0.0
	for _, n := range names {
		mm, _ := z.Size(n)
		total += mm
	}
	return total
}
