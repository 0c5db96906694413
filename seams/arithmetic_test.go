package seams_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bodkin/seams"
)

func near(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

func TestNeedleSizes(t *testing.T) {
	// Sewing Machine Needle Sizing (shoemaking.wiki), a needle chart for fabric weights, and a page on needle sizes.
	for nm, us := range map[int]int{60: 8, 65: 9, 70: 10, 75: 11, 80: 12, 90: 14, 100: 16, 110: 18, 120: 19,
		85: 13, 95: 15, 125: 20, 130: 21, 140: 22, 160: 23, 180: 24, 200: 25, 230: 26, 250: 27} {
		if got, ok := seams.NeedleUS(nm); !ok || got != us {
			t.Errorf("NM %d is US %d, %v; want %d", nm, got, ok, us)
		}
		if got, ok := seams.NeedleNM(us); !ok || got != nm {
			t.Errorf("US %d is NM %d, %v; want %d", us, got, ok, nm)
		}
		// "Needle number system", apparelscience.com: below US 19, NM = 60 + 5 (US − 8).
		if us < 19 && nm != 60+5*(us-8) {
			t.Errorf("NM %d and US %d are off the rule", nm, us)
		}
	}
	if _, ok := seams.NeedleUS(77); ok {
		t.Error("NM 77 has an American number")
	}
	if _, ok := seams.NeedleNM(17); ok {
		t.Error("US 17 has a metric size")
	}
}

// 25.4 mm to the inch; the figure for 2.5 mm is printed as 10.16.
func TestDensity(t *testing.T) {
	for mm, want := range map[float64]float64{1: 25.40, 1.5: 16.93, 2: 12.70, 2.5: 10.16, 3: 8.47, 3.5: 7.26, 4: 6.35, 5: 5.08, 6: 4.23} {
		if got := seams.PerInch(mm); !near(got, want, 0.005) {
			t.Errorf("%v mm is %v to the inch, want %v", mm, got, want)
		}
		if got := seams.StitchMM(seams.PerInch(mm)); !near(got, mm, 1e-12) {
			t.Errorf("%v mm comes back as %v", mm, got)
		}
	}
	for mm, want := range map[float64]float64{1: 10, 1.5: 6.67, 2: 5, 2.5: 4, 3: 3.33, 4: 2.5, 5: 2} {
		if got := seams.PerCM(mm); !near(got, want, 0.005) {
			t.Errorf("%v mm is %v to the cm, want %v", mm, got, want)
		}
	}
}

// A thread maker's bulletin on stitches per inch and booklet, pp. 32 and 33.
func TestSeamStrength(t *testing.T) {
	s := load(t)
	for _, c := range []struct {
		stitch                           string
		density, thread, want, tolerance float64
	}{
		{"301", 10, 4.0, 60, 1e-9}, {"401", 10, 4.0, 68, 1e-9},
		{"301", 6, 2.6, 23.4, 1e-9}, {"301", 8, 2.6, 31.2, 1e-9}, {"301", 10, 2.6, 39, 1e-9}, {"301", 12, 2.6, 46.8, 1e-9},
		{"301", 6, 2.2, 20, 0.5}, {"301", 8, 2.2, 26, 0.5}, {"301", 10, 2.2, 33, 0.5}, {"301", 12, 2.2, 40, 0.5},
		{"301", 6, 2.8, 25, 0.5}, {"301", 8, 2.8, 34, 0.5}, {"301", 10, 2.8, 42, 0.5}, {"301", 12, 2.8, 50, 0.5}, // thread not shown, 2.8 lb fits: Selecting the Right SPI
		{"401", 5, 35, 297, 0.6}, // bonded 207: a page on estimating the strength of industrial sewing thread
		// 39 lbf/in is 68.3 N/cm, with 4.4482 N to the pound-force.
		{"301", 10 / 2.54, 2.6 * 4.44822, 68.3, 0.05},
	} {
		st, _ := s.Stitch(c.stitch)
		if got, err := st.SeamStrength(c.density, c.thread); err != nil || !near(got, c.want, c.tolerance) {
			t.Errorf("%s, %v stitches, thread %v: %v, %v; want %v", c.stitch, c.density, c.thread, got, err, c.want)
		}
	}
	zigzag, _ := s.Stitch("304")
	if _, err := zigzag.SeamStrength(10, 4); !errors.Is(err, seams.ErrNoStrength) {
		t.Errorf("304 has a strength: %v", err)
	}
}

func TestSewingMinutes(t *testing.T) {
	const inch, yard = 25.4, 914.4
	for _, c := range []struct {
		length, perInch, speed, want float64
		source                       string
	}{
		{50 * inch, 10, 2000, 0.25, "article on sewing time from revolutions: 500 stitches, 15 s"},
		{50 * inch, 10, 1000, 0.5, "the same: 30 s"},
		{17.4 * yard, 8, 5000, 1, "a thread maker's booklet, p. 35: 17.4 yd in a minute"},
		{9.9 * yard, 14, 5000, 1, "the same: 9.9 yd in a minute"},
		{87.5 * inch, 12, 1050, 1, "a stitch length page: 87.5 in in a minute"},
	} {
		if got := seams.SewingMinutes(c.length, seams.StitchMM(c.perInch), c.speed); !near(got, c.want, 0.004) {
			t.Errorf("%v mm at %v to the inch, %v a minute: %v, want %v (%s)", c.length, c.perInch, c.speed, got, c.want, c.source)
		}
	}
	if got := seams.SewingMinutes(100, 0, 400); got != 0 {
		t.Errorf("no stitch length takes %v minutes", got)
	}
}

func TestActMinutes(t *testing.T) {
	s := load(t)
	pin, err := s.Act("pin")
	if err != nil {
		t.Fatal(err)
	}
	calm, hard := seams.Cloth{Title: "Calico"}, seams.Cloth{Title: "Silk chiffon", Properties: seams.Properties{Slip: 3, Sheerness: 3}}
	quick, basis := seams.ActMinutes(*pin, 500, calm)
	if !near(quick, pin.Start+pin.PerMetre/2, 1e-12) || basis != pin.Basis {
		t.Errorf("half a metre of pinning: %v (%s)", quick, basis)
	}
	slow, basis := seams.ActMinutes(*pin, 500, hard)
	if slow <= quick || !strings.Contains(basis, "estimate") || !strings.Contains(basis, "Silk chiffon") {
		t.Errorf("chiffon takes %v (%s), calico %v", slow, basis, quick)
	}
	for _, a := range s.Acts {
		if !strings.Contains(a.Basis, "estimate") {
			t.Errorf("%s does not own that its minutes are an estimate: %s", a.Name, a.Basis)
		}
	}
}

// need / (1 − s): 3 yd at 5 %, 2.5 m at 10 % (closed form).
func TestBuy(t *testing.T) {
	for _, c := range []struct{ need, shrinkage, want float64 }{{3, 5, 3.158}, {2.5, 10, 2.78}, {1, 0, 1}} {
		if got, err := seams.Buy(c.need, c.shrinkage); err != nil || !near(got, c.want, 0.003) {
			t.Errorf("%v at %v %%: %v, %v; want %v", c.need, c.shrinkage, got, err, c.want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		need, s := rapid.Float64Range(0.1, 50).Draw(t, "need"), rapid.Float64Range(0, 30).Draw(t, "shrinkage")
		bought, err := seams.Buy(need, s)
		if err != nil || !near(bought*(1-s/100), need, 1e-9) {
			t.Fatalf("%v at %v %% leaves %v, %v", need, s, bought*(1-s/100), err)
		}
	})
	for _, s := range []float64{-1, 100, 150} {
		if _, err := seams.Buy(1, s); err == nil {
			t.Errorf("a shrinkage of %v %% is accepted", s)
		}
	}
}
