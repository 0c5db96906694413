package cutting

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

const inch, yard = 25.4, 914.4

func near(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.6g, want %.6g within %g", what, got, want, tolerance)
	}
}

// must hands on a result that comes with an error.
func must(t *testing.T) func(float64, error) float64 {
	return func(x float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Error(err)
		}
		return x
	}
}

// The rule of thumb for bias in worked examples of sewing pages, all common
// practice, no source; inches.
func TestAreaRule(t *testing.T) {
	for _, c := range []struct{ side, width, length float64 }{
		{12, 2, 72}, {20, 2, 200}, {36, 2, 18 * 36},
		// a printed table has the lengths of these two squares exchanged: by the
		// rule 299 in belong to the smaller one, for strips of about 1.85 in
		{23.5, 1.85, 299}, {25.5, 1.85, 351},
	} {
		near(t, "length", AreaRule(c.side, c.width), c.length, 1)
		near(t, "side", AreaRuleSide(c.length, c.width), c.side, 0.05)
	}
	for _, c := range []struct{ length, width, side, cut float64 }{{250, 2, 22.36, 23}, {100, 3.5, 18.71, 19}} {
		side := AreaRuleSide(c.length, c.width)
		near(t, "side", side, c.side, 0.005)
		near(t, "rounded up", math.Ceil(side), c.cut, 0)
	}
}

// 98 in of strip 1 in wide by the continuous method with seams of 1/4 in: seven
// rounds from a square of 10.4 in, where the area rule says 9.9 and gives only
// six. Common practice, no source.
func TestContinuousBiasAgainstTheAreaRule(t *testing.T) {
	side := must(t)(ContinuousSquare(98*inch, inch, inch/4))
	near(t, "side", side, 10.4*inch, 0.05*inch)
	length, rounds, err := ContinuousBias(side, inch, inch/4)
	if err != nil || rounds != 7 {
		t.Errorf("%d rounds, %v", rounds, err)
	}
	near(t, "length", length, 98*inch, 1e-6)
	thumb := AreaRuleSide(98*inch, inch)
	near(t, "by the area rule", thumb, 9.9*inch, 0.01*inch)
	if length, rounds, err = ContinuousBias(thumb, inch, inch/4); err != nil || rounds != 6 || length > 80*inch {
		t.Errorf("the area rule's square gives %d rounds, %.1f in, %v", rounds, length/inch, err)
	}
}

// Strips by count, 20 in by 2 1/2 in: eight of 20 in, 160 in by the rule (common
// practice after S. Betzina). Cut one by one they are five or fewer on either
// side of the diagonal, and lose seams.
func TestStripsFromASquare(t *testing.T) {
	b, err := BiasFromSquare(20*inch, 2.5*inch, 0)
	if err != nil {
		t.Fatal(err)
	}
	// by hand: 20√2 = 28.284; middles at 1.25, 3.75 … from the diagonal
	want := []float64{25.784, 25.784, 20.784, 20.784, 15.784, 15.784, 10.784, 10.784, 5.784, 5.784}
	for i := range want {
		want[i] *= inch
	}
	if diff := cmp.Diff(want, b.Each, cmpopts.EquateApprox(0, 0.02)); diff != "" {
		t.Error(diff)
	}
	near(t, "all of them", b.Total, 157.84*inch, 0.1*inch)
	if b.Total > AreaRule(20*inch, 2.5*inch) {
		t.Error("more than the cloth holds")
	}
	sewn, err := BiasFromSquare(20*inch, 2.5*inch, inch/4)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "nine seams", b.Total-sewn.Total, 9*2*math.Sqrt2*inch/4, 1e-6)
}

func TestFullness(t *testing.T) {
	// sewing pages, common practice, no source
	near(t, "15 in at 2 1/2, 2 in to start and 1 in of seam", must(t)(Ruffle(15*inch, 2.5, 3*inch)), 40.5*inch, 1e-9)
	// L. I. Baldt, Clothing for Women, 1916: two edges of 24 in at 1 1/2, from
	// cloth of 36 in two strips; joins taken as butted
	long := must(t)(Ruffle(2*24*inch, 1.5, 0))
	near(t, "underwear ruffle", long, 72*inch, 1e-9)
	if p, err := (Strip{Length: long, Width: 3 * inch, Cloth: 36 * inch}).Plan(); err != nil || p.Lengths != 2 {
		t.Errorf("%+v, %v", p, err)
	}
	// side pleating takes three times the finished length (common practice)
	p, err := KnifePleats(26*inch, inch, inch)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "side pleating", p.Flat, 78*inch, 1e-9)
	// a box-pleated ruche a little less: its pleats do not quite meet (common practice)
	if p, err = KnifePleats(26*inch, inch, 0.96*inch); err != nil || p.Flat >= 78*inch || p.Flat < 0.95*78*inch {
		t.Errorf("box pleats take %.1f in, %v", p.Flat/inch, err)
	}
	// I. D. Conover, A Complete Course in Dressmaking, vol. 5, Skirts, 1922, pp. 64, 69
	near(t, "to pleat at the hem", must(t)(PleatTake(44*inch, 27.5*inch, 0, 1)), 16.5*inch, 1e-9)
	near(t, "waist, just under 4 in", must(t)(PleatTake(30*inch, 0, 2.125*inch, 7)), 3.982*inch, 0.001*inch)
	near(t, "hip", must(t)(PleatTake(24*inch, 0, 2.125*inch, 7)), 3.125*inch, 1e-9)
}

func TestCircleSkirts(t *testing.T) {
	for _, c := range []struct{ waist, share, radius float64 }{ // arithmetic
		{28 * inch, 1, 4.46 * inch}, {28 * inch, 0.75, 5.94 * inch}, {28 * inch, 0.5, 8.91 * inch}, {28 * inch, 0.25, 17.83 * inch},
		{710, 1, 113}, {710, 0.75, 151}, {710, 0.5, 226}, {710, 0.25, 452},
	} {
		near(t, "radius", must(t)(CircleRadius(c.waist, c.share)), c.radius, 0.6)
		if err := CheckCircleRadius(c.radius, c.waist, c.share, 4); err != nil {
			t.Error(err)
		}
	}
	// the usual slip, common practice, no source: a waist of 32 in divided by 4
	// makes a hole of 50.3 in, 18.3 in too much; right is 5.09 in
	err := CheckCircleRadius(8*inch, 32*inch, 1, 5)
	if err == nil || !strings.Contains(err.Error(), "divided by 4") || !strings.Contains(err.Error(), "1277 mm round, +464 mm") || !strings.Contains(err.Error(), "129 mm") {
		t.Errorf("a waist divided by four: %v", err)
	}
	if err := CheckCircleRadius(100, 710, 1, 5); err == nil || strings.Contains(err.Error(), "divided by 4") {
		t.Errorf("a radius wrong in another way: %v", err)
	}
}

func TestElasticAndKnits(t *testing.T) { // common practice, no source
	near(t, "waist of 30 in", must(t)(Elastic(30*inch, 0)), 28*inch, 1e-9)
	near(t, "10 in stretched to 15", must(t)(StretchOf(10*inch, 15*inch)), 50, 1e-9)
	near(t, "neckline of 20 in at 0.9", must(t)(KnitBand(20*inch, 0.9, 0)), 18*inch, 1e-9)
}

// Complete photo guide to sewing, Creative Publishing, chapter on buttonholes;
// the worked sums are common practice, no source.
func TestButtons(t *testing.T) {
	near(t, "1 in wide, 1/4 in thick", must(t)(ButtonholeLength(inch, inch/4, 0)), 1.25*inch, 1e-9)
	near(t, "with 1/8 in", must(t)(ButtonholeLength(inch, inch/4, inch/8)), 1.375*inch, 1e-9)
	near(t, "3/4 in button", ButtonExtension(0.75*inch), 9./16*inch, 1e-9)
	past, in := ButtonholeSpan(1.25 * inch)
	near(t, "past the centre line, 1/8 in", past, inch/8, 0.2)
	near(t, "the rest, 1 1/8 in", in, 1.125*inch, 0.2)
	got, err := ButtonPlaces([]float64{600, 15, 240, 400}, 90)
	want := []float64{15, 90, 165, 240, 320, 400, 400 + 200./3, 400 + 400./3, 600}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-9)); err != nil || diff != "" {
		t.Error(err, diff)
	}
}

// The fabric conversion chart (three printed copies; first issued by the New
// Jersey Extension, from memory), yards. Its 66 in column is as two copies have
// it. The area law is found again in it, but no closer than this: up to four
// yards of the narrowest cloth, from which the chart is told, to within a quarter
// of a yard, the chart's own reserve for unlike widths; among widths from 39 to
// 60 in all over to within 0.3 yd; with the narrowest and the widest to within
// half a yard.
func TestOtherWidthAgainstTheChart(t *testing.T) {
	widths := []float64{36, 39, 41, 45, 50, 54, 60, 66}
	chart := [][]float64{
		{1.75, 1.5, 1.5, 1.375, 1.25, 1.125, 1, 0.875},
		{2, 1.75, 1.75, 1.625, 1.5, 1.375, 1.25, 1.125},
		{2.25, 2, 2, 1.75, 1.625, 1.5, 1.375, 1.25},
		{2.5, 2.25, 2.25, 2.125, 1.75, 1.75, 1.625, 1.5},
		{2.875, 2.5, 2.5, 2.25, 2, 1.875, 1.75, 1.625},
		{3.125, 2.75, 2.75, 2.5, 2.25, 2, 1.875, 1.75},
		{3.375, 3, 2.875, 2.75, 2.375, 2.25, 2, 1.875},
		{3.75, 3.25, 3.125, 2.875, 2.625, 2.375, 2.25, 2.125},
		{4.25, 3.5, 3.375, 3.125, 2.75, 2.625, 2.375, 2.25},
		{4.5, 3.75, 3.625, 3.375, 3, 2.75, 2.625, 2.5},
		{4.75, 4, 3.875, 3.625, 3.25, 2.875, 2.75, 2.625},
		{5, 4.25, 4.125, 3.875, 3.375, 3.125, 2.875, 2.75},
	}
	for r, row := range chart {
		for i, from := range row {
			for j, to := range row {
				got := must(t)(OtherWidth(from*yard, widths[i]*inch, widths[j]*inch)) / yard
				within := 0.5
				switch ends := i == 0 || j == 0 || i == 7 || j == 7; {
				case i == 0 && r < 8:
					within = 0.25
				case !ends:
					within = 0.3
				}
				if math.Abs(got-to) > within {
					t.Errorf("row %d: %g yd of %g in as %g in: law %.3f, chart %g", r+1, from, widths[i], widths[j], got, to)
				}
			}
		}
	}
	for _, c := range []struct{ from, width, to, other float64 }{{1.375, 54, 2, 36}, {2, 60, 2.75, 45}} { // worked beside the chart
		near(t, "worked", must(t)(OtherWidth(c.from*yard, c.width*inch, c.other*inch))/yard, c.to, 0.125)
	}
}

// need / (1 - s), arithmetic: 3 yd at 5 % are 3.158 yd and not 3.15, 2.5 m at
// 10 % 2.78 m.
func TestBuy(t *testing.T) {
	for _, c := range []struct{ need, percent, buy float64 }{{3 * yard, 5, 3.158 * yard}, {2500, 10, 2778}} {
		got, left, err := Buy(c.need, 1140, c.percent, 2)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "buy", got, c.buy, 0.5)
		near(t, "width left", left, 1117.2, 1e-9)
	}
	for _, bad := range [][2]float64{{-1, 0}, {100, 0}, {0, 100}, {0, math.NaN()}} {
		if _, _, err := Buy(1000, 1140, bad[0], bad[1]); err == nil {
			t.Errorf("shrinkage of %v was accepted", bad)
		}
	}
}
