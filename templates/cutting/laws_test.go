package cutting

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestStripsFromThePractice(t *testing.T) {
	for _, c := range []struct {
		what, source   string
		strip          Strip
		lengths, joins int
		most           float64
	}{
		{"front and neck band of a 66 in coat, 5 in wide, in 45 in cloth", "common practice, no source",
			Strip{Length: 133 * inch, Width: 5 * inch, Cloth: 45 * inch, Join: inch / 4}, 3, 2, 45 * inch},
		{"half of a 45 in strip is enough for a 20 in sleeve with allowances", "common practice, no source",
			Strip{Length: 21 * inch, Width: 5 * inch, Cloth: 22.5 * inch, Join: inch / 4}, 1, 0, 22.5 * inch},
		{"a strip as long as the cloth is wide needs no join", "arithmetic",
			Strip{Length: 1140, Width: 40, Cloth: 1140, Join: 6}, 1, 0, 1140},
		{"a bias strip lies on the diagonal: 45 in cloth gives 63.6 in", "arithmetic, √2",
			Strip{Length: 63.6 * inch, Width: 2 * inch, Cloth: 45 * inch, Join: inch / 4, Bias: true, Diagonal: true}, 1, 0, 63.7 * inch},
		{"eight placemats of 60 in, bound, 2 in overlap each: 496 in from 44 in cloth on the bias, 2 in wide", "common practice, no source (length); √2",
			Strip{Length: (8*60 + 2*8) * inch, Width: 2 * inch, Cloth: 44 * inch, Join: inch / 4, Bias: true, Diagonal: true}, 9, 8, 62.3 * inch},
	} {
		p, err := c.strip.Plan()
		if err != nil || p.Lengths != c.lengths || p.Joins != c.joins || p.Each > c.most {
			t.Errorf("%s (%s): %+v, %v", c.what, c.source, p, err)
		}
	}
	// straight pieces 2 in wide crossed and stitched from corner to corner lose 2 in a join
	p, err := (Strip{Length: 100 * inch, Width: 2 * inch, Cloth: 40 * inch, Diagonal: true}).Plan()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "each of three", p.Each, (100+2*2)*inch/3, 1e-9)
	near(t, "cloth", p.Along, 6*inch, 1e-9)
}

// Whatever the measures: the pieces are no longer than the cloth gives, joined
// they make exactly the strip, one fewer would not do, and they lie on the cloth
// without overlapping.
func TestStripLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Strip{
			Length: rapid.Float64Range(50, 20000).Draw(t, "length"), Width: rapid.Float64Range(10, 150).Draw(t, "width"),
			Cloth: rapid.Float64Range(300, 1600).Draw(t, "cloth"), Join: rapid.Float64Range(0, 15).Draw(t, "join"),
			Bias: rapid.Bool().Draw(t, "bias"), Diagonal: rapid.Bool().Draw(t, "diagonal"),
		}
		p, err := s.Plan()
		if err != nil {
			t.Fatal(err)
		}
		if p.Each > p.Longest+1e-6 {
			t.Errorf("%g mm from cloth that gives %g", p.Each, p.Longest)
		}
		near(t, "joined", float64(p.Lengths)*p.Each-float64(p.Joins)*p.Loss, s.Length, 1e-6)
		if n := float64(p.Lengths - 1); n >= 1 && n*p.Longest-(n-1)*p.Loss > s.Length+1e-6 {
			t.Errorf("%d pieces would do, planned %d", p.Lengths-1, p.Lengths)
		}
		if area := float64(p.Lengths) * p.Each * s.Width; p.Along*s.Cloth < area-1e-6 {
			t.Errorf("%g mm² of strip on %g mm² of cloth", area, p.Along*s.Cloth)
		}
	})
}

// No way of cutting gives more than the cloth holds, so the area rule is an upper
// bound; both ways come close to it as strips grow narrow. The square worked out
// for a length gives it, and one a little smaller does not.
func TestBiasLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.Float64Range(15, 120).Draw(t, "width")
		seam := rapid.Float64Range(0, 10).Draw(t, "seam")
		side := rapid.Float64Range(250, 1500).Draw(t, "side")
		round, _, err := ContinuousBias(side, width, seam)
		if err != nil {
			t.Fatal(err)
		}
		single, err := BiasFromSquare(side, width, seam)
		if err != nil {
			t.Fatal(err)
		}
		rule := AreaRule(side, width)
		if round > rule+1e-6 || single.Total > rule+1e-6 {
			t.Errorf("by rule %g, round %g, single %g", rule, round, single.Total)
		}
		if free, _, _ := ContinuousBias(side, width, 0); free < rule-math.Sqrt2*side {
			t.Errorf("less than the rule %g by more than a round: %g", rule, free)
		}
		if !slices.IsSortedFunc(single.Each, func(a, b float64) int { return cmp.Compare(b, a) }) {
			t.Errorf("not longest first: %v", single.Each)
		}
		length := rapid.Float64Range(300, 30000).Draw(t, "length")
		wanted, err := ContinuousSquare(length, width, seam)
		if err != nil {
			t.Fatal(err)
		}
		if got, _, err := ContinuousBias(wanted, width, seam); err != nil || got < length-1e-6 {
			t.Errorf("a square of %g gives %g of %g, %v", wanted, got, length, err)
		}
		if got, _, err := ContinuousBias(wanted*0.999-0.001, width, seam); err == nil && got >= length {
			t.Errorf("a smaller square than %g still gives %g", wanted, got)
		}
		if wanted < AreaRuleSide(length, width) {
			t.Errorf("a square of %g holds less than the strip", wanted)
		}
	})
}

func laid() *rapid.Generator[[]Laid] {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Laid {
		p := Laid{
			Name: rapid.StringMatching("[a-z]{3}").Draw(t, "name"), Across: rapid.Float64Range(20, 1100).Draw(t, "across"),
			Along: rapid.Float64Range(20, 1200).Draw(t, "along"), Place: Place(rapid.IntRange(0, 2).Draw(t, "place")),
			Count: rapid.IntRange(1, 5).Draw(t, "count"),
		}
		p.Area = p.Across * p.Along * rapid.Float64Range(0.4, 1).Draw(t, "share")
		return p
	}), 1, 8)
}

// A row holds what it says within its width and length, every piece is laid as
// often as it is wanted, one at most lies at a fold, and no lay beats its area.
func TestLayLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := laid().Draw(t, "pieces")
		for i := range pieces {
			pieces[i].Name += string(rune('A' + i))
		}
		const width, gap = 1100.0, 10.0
		e, err := Lay(pieces, width, gap)
		if err != nil {
			t.Fatal(err)
		}
		if e.Lay < e.Least-1e-6 {
			t.Errorf("laid in %g, at least %g", e.Lay, e.Least)
		}
		by := map[string]Laid{}
		for _, p := range pieces {
			by[p.Name] = p
		}
		got := map[string]int{}
		for _, r := range e.Rows {
			across, folds := -gap, 0
			for _, name := range r.Pieces {
				p := by[name]
				switch {
				case r.Open:
					across += p.Across + gap
					got[name]++
				case p.Place == OnFold:
					folds++
					across += p.Across/2 + gap
					got[name]++
				case p.Place == Paired:
					across += p.Across + gap
					got[name] += 2
				default:
					across += p.Across + gap
					got[name]++
				}
				if p.Along > r.Along {
					t.Errorf("%s is longer than its row", name)
				}
			}
			room := width / 2
			if r.Open {
				room = width
			}
			if folds > 2 || folds == 2 && len(r.Pieces) > 2 || across > room+1e-6 || math.Abs(across-r.Across) > 1e-6 {
				t.Errorf("%d at the fold, %g across of %g, told as %g", folds, across, room, r.Across)
			}
		}
		for _, p := range pieces {
			if n := got[p.Name]; n < p.Count || n > p.Count+1 {
				t.Errorf("%s laid %d times, wanted %d", p.Name, n, p.Count)
			}
		}
	})
}

// Coffman, Garey, Johnson and Tarjan, SIAM Journal on Computing 9, 1980: rows by
// falling length take at most twice the area over the width, and the longest.
func TestLayBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := laid().Draw(t, "pieces")
		longest, area := 0.0, 0.0
		for i := range pieces {
			p := &pieces[i]
			p.Place, p.Across, p.Count = Paired, p.Across/2, 2*p.Count
			p.Area = p.Across * p.Along
			longest, area = max(longest, p.Along), area+p.Area*float64(p.Count)
		}
		e, err := Lay(pieces, 1100, 0)
		if err != nil {
			t.Fatal(err)
		}
		if e.Lay > 2*area/1100+longest+1e-6 {
			t.Errorf("laid in %g, bound %g", e.Lay, 2*area/1100+longest)
		}
	})
}

// A skirt of two on the fold and a pair of pockets, laid by hand.
func TestLayByHand(t *testing.T) {
	e, err := Lay([]Laid{
		{Name: "pocket", Across: 180, Along: 200, Area: 30000, Place: Paired, Count: 2},
		{Name: "front", Across: 700, Along: 650, Area: 400000, Place: OnFold, Count: 1},
		{Name: "back", Across: 720, Along: 660, Area: 410000, Place: OnFold, Count: 1},
	}, 1140, 10)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rows", float64(len(e.Rows)), 2, 0) // 700/2 and 720/2 do not fit into 570
	near(t, "lay", e.Lay, 660+10+650, 1e-9)
	near(t, "least", e.Least, (400000+410000+60000)/1140., 1e-9)
	if !slices.Equal(e.Rows[0].Pieces, []string{"back", "pocket"}) {
		t.Errorf("first row: %v", e.Rows[0].Pieces)
	}
	e, err = Lay([]Laid{
		{Name: "front", Across: 565, Along: 682, Place: OnFold, Count: 1}, {Name: "back", Across: 525, Along: 653, Place: OnFold, Count: 1},
		{Name: "tab", Across: 10, Along: 20, Place: Paired, Count: 2},
	}, 1140, 10)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "selvedges folded to the middle, the tab below", e.Lay, 682+10+20, 1e-9)
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	one := func(_ float64, err error) error { return err }
	bias := func(_ float64, _ int, err error) error { return err }
	strip := func(s Strip) error { _, err := s.Plan(); return err }
	lay := func(p Laid, width float64) error { _, err := Lay([]Laid{p}, width, 0); return err }
	square := func(side, width, seam float64) error { _, err := BiasFromSquare(side, width, seam); return err }
	pleats := func(a, b, c float64) error { _, err := KnifePleats(a, b, c); return err }
	buttons := func(must []float64, widest float64) error { _, err := ButtonPlaces(must, widest); return err }
	for what, err := range map[string]error{
		"length of -1":           strip(Strip{Length: -1, Width: 1, Cloth: 1}),
		"width of 0":             strip(Strip{Length: 1, Cloth: 1}),
		"cloth of NaN":           strip(Strip{Length: 1, Width: 1, Cloth: nan}),
		"too narrow":             strip(Strip{Length: 100, Width: 1, Cloth: 10, Join: 6}),
		"square of 0":            bias(ContinuousBias(0, 1, 0)),
		"square of 50":           bias(ContinuousBias(50, 40, 0)),
		"no square gives":        one(ContinuousSquare(nan, 1, 0)),
		"square of 10":           square(10, 40, 0),
		"no bias comes":          square(nan, 40, 0),
		"cannot take a ruffle":   one(Ruffle(100, 0.9, 0)),
		"no pleats":              pleats(100, 0, 5),
		"lie over each other":    pleats(100, 10, 20),
		"cannot be pleated down": one(PleatTake(10, 20, 0, 3)),
		"in 0 pleats":            one(PleatTake(20, 10, 0, 0)),
		"of a circle fits":       one(CircleRadius(700, 0)),
		"waist of NaN":           CheckCircleRadius(100, nan, 1, 5),
		"too small to be":        one(Elastic(80, 0)),
		"cannot have stretched":  one(StretchOf(10, 5)),
		"cannot be cut":          one(KnitBand(100, 1.2, 0)),
		"has no buttonhole":      one(ButtonholeLength(0, 1, 3)),
		"at least one place":     buttons(nil, 90),
		"wants 1000 buttons":     buttons([]float64{0, 1000}, 1),
		"cannot be had":          one(OtherWidth(1, 2, 0)),
		"wide and the cloth":     lay(Laid{Name: "back", Across: 1200, Along: 9, Count: 1}, 1140),
		"cannot be laid":         lay(Laid{Name: "back", Across: 1200, Along: nan, Count: 1}, 1140),
		"nothing can be laid":    lay(Laid{}, 0),
	} {
		if err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("want %q, got %v", what, err)
		}
	}
}
