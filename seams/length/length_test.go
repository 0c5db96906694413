package length_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"bodkin/seams/length"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"15 mm", 15}, {"15mm", 15}, {"1.5 cm", 15}, {"62 cm", 620}, {"1.14 m", 1140},
		{"1 in", 25.4}, {"5/8 in", 15.875}, {"1 5/8 in", 41.275}, {"1 ⅝ in", 41.275}, {"1⅝ in", 41.275},
		{"⅝ in", 15.875}, {`5/8"`, 15.875}, {"5/8″", 15.875}, {"1⁵⁄₁₆ in", 33.3375}, {"³⁄₁₆ in", 4.7625},
		{"1 yd", 914.4}, {"2 3/8 yd", 2171.7}, {"1 ft", 304.8}, {"⅓ yd", 304.8},
		{"-3 mm", -3}, {"−3 mm", -3}, {"+3 mm", 3}, {".5 in", 12.7}, {" 6 mm ", 6}, {"6\u00a0mm", 6}, {"-0 mm", 0},
	} {
		got, err := length.Parse(c.text)
		if err != nil || math.Abs(float64(got)-c.want) > 1e-9 {
			t.Errorf("Parse(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
		if math.Signbit(float64(got)) && got == 0 {
			t.Errorf("Parse(%q) is a negative zero", c.text)
		}
	}
}

func TestParseErrors(t *testing.T) {
	for _, c := range []struct{ text, problem, nearest, mend string }{
		{"", "is empty", "", "15 mm"},
		{"15", "has no unit", "", "add a unit, such as 15 mm"},
		{"5/8", "has no unit", "", "add a unit"},
		{"1,5 cm", "has a comma", "", "write a decimal with a point: 1.5 cm"},
		{"15 mms", "unknown unit", "mm", "units are"},
		{"15 CM", "unknown unit", "cm", "units are"},
		{"15 centimetres", "unknown unit", "cm", "units are"},
		{"1 inch", "unknown unit", "in", "units are"},
		{"2 yards", "unknown unit", "yd", "units are"},
		{"3 feet", "unknown unit", "ft", "units are"},
		{"2 metres", "unknown unit", "m", "units are"},
		{"15 qq", "where the unit should be", "", "units are"},
		{"mm", "does not start with a number", "", "15 mm"},
		{"1-5/8 in", "hyphen", "", "1 5/8 in"},
		{"1 9/8 in", "fraction of one or more", "", "one number"},
		{"1/0 in", "fraction that cannot be read", "", "5/8"},
		{"1. in", "point with nothing after", "", "1.0"},
		{"10 km", "unknown", "", "units"},
		{"9999999 m", "longer than a kilometre", "", "check"},
		{"1 1/2 3 in", "where the unit should be", "", "units"},
		{"NaN mm", "does not start with a number", "", ""},
		{"1e3 mm", "where the unit should be", "", ""},
		{"6 mm\xff", "is not readable text", "", ""},
	} {
		got, err := length.Parse(c.text)
		e, ok := errors.AsType[*length.Error](err)
		if !ok || got != 0 {
			t.Errorf("Parse(%q) = %v, %v; want a length.Error and 0", c.text, got, err)
			continue
		}
		if c.text == "10 km" { // any unit it names is as good as none
			continue
		}
		if !strings.Contains(e.Problem, c.problem) || e.Nearest != c.nearest || !strings.Contains(e.Mend, c.mend) {
			t.Errorf("Parse(%q): problem %q, nearest %q, mend %q", c.text, e.Problem, e.Nearest, e.Mend)
		}
		if s := e.Error(); strings.HasSuffix(s, ".") {
			t.Errorf("message ends in a full stop: %s", s)
		}
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		mm     length.MM
		metric string
		inch   string
	}{
		{0, "0 mm", "0 in"}, {6, "6 mm", "¼ in"}, {15, "15 mm", "⁹⁄₁₆ in"}, {15.875, "16 mm", "⅝ in"},
		{1.5, "1.5 mm", "¹⁄₁₆ in"}, {41.275, "41.5 mm", "1⅝ in"}, {99.97, "10 cm", "3¹⁵⁄₁₆ in"},
		{99.6, "99.5 mm", "3¹⁵⁄₁₆ in"}, {12.25, "12.5 mm", "½ in"}, {9.94, "9.9 mm", "⅜ in"}, {100, "10 cm", "3¹⁵⁄₁₆ in"}, {114, "11.4 cm", "4½ in"},
		{620, "62 cm", "24⅜ in"}, {920, "92 cm", "36¼ in"}, {304.8, "30.5 cm", "12 in"}, {-6, "-6 mm", "-¼ in"},
		{0.3, "0.3 mm", "0.01 in"}, {0.03, "0.03 mm", "0.001 in"}, {0.001, "0.001 mm", "0.00004 in"}, {1140, "114 cm", "44⅞ in"}, {19.05, "19 mm", "¾ in"},
	} {
		if got := length.Format(c.mm, length.Centimetres); got != c.metric {
			t.Errorf("Format(%v, cm) = %q, want %q", c.mm, got, c.metric)
		}
		if got := length.Format(c.mm, length.Inches); got != c.inch {
			t.Errorf("Format(%v, in) = %q, want %q", c.mm, got, c.inch)
		}
	}
}

func TestLong(t *testing.T) {
	for _, c := range []struct {
		mm        length.MM
		metres, y string
	}{
		{3200, "3.2 m", "3½ yd"}, {914.4, "0.91 m", "1 yd"}, {2171.7, "2.17 m", "2⅜ yd"}, {87500, "87.5 m", "95¾ yd"},
	} {
		if got := length.Long(c.mm, length.Centimetres); got != c.metres {
			t.Errorf("Long(%v, cm) = %q, want %q", c.mm, got, c.metres)
		}
		if got := length.Long(c.mm, length.Inches); got != c.y {
			t.Errorf("Long(%v, in) = %q, want %q", c.mm, got, c.y)
		}
	}
}

// The trade rounds inches when it writes metric; the exact figure is what we
// compute. Rounded figures: common practice, no source (they are printed side
// by side in home-sewing instructions). Exact figures: 25.4 mm to the inch.
func TestTradeRoundings(t *testing.T) {
	for _, c := range []struct {
		text         string
		exact, trade float64
	}{
		{"1/8 in", 3.175, 3}, {"1/4 in", 6.35, 6}, {"3/8 in", 9.525, 10}, {"1/2 in", 12.7, 13},
		{"5/8 in", 15.875, 15}, {"3/4 in", 19.05, 20}, {"1 in", 25.4, 25},
	} {
		got, err := length.Parse(c.text)
		if err != nil || math.Abs(float64(got)-c.exact) > 1e-12 {
			t.Errorf("Parse(%q) = %v, %v; want %v", c.text, got, err, c.exact)
		}
		if d := math.Abs(float64(got) - c.trade); d >= 1 {
			t.Errorf("%s is %v mm from the trade's rounding %v mm", c.text, d, c.trade)
		}
	}
}

// The yard is 0.9144 m (international yard and pound agreement, 1959).
func TestYard(t *testing.T) {
	if got, err := length.Parse("1 yd"); err != nil || got != 914.4 {
		t.Errorf("1 yd = %v, %v", got, err)
	}
	if got := length.MM(63.5).Inches(); got != 2.5 {
		t.Errorf("63.5 mm = %v in", got)
	}
}

func TestStyle(t *testing.T) {
	for _, s := range []length.Style{length.Centimetres, length.Inches} {
		var got length.Style
		if err := got.UnmarshalText([]byte(s.String())); err != nil || got != s {
			t.Errorf("style %v reads back as %v, %v", s, got, err)
		}
	}
	var s length.Style
	err := s.UnmarshalText([]byte("inches"))
	if e, ok := errors.AsType[*length.Error](err); !ok || e.Nearest != "in" {
		t.Errorf("inches: %v", err)
	}
	var m length.MM
	if err := m.UnmarshalText([]byte("5/8 in")); err != nil || m != 15.875 {
		t.Errorf("UnmarshalText: %v, %v", m, err)
	}
	if err := m.UnmarshalText([]byte("5")); err == nil || m != 15.875 {
		t.Errorf("a failed UnmarshalText changed the value to %v (%v)", m, err)
	}
}

func TestWriteThenRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := length.MM(rapid.Float64Range(-99999, 99999).Draw(t, "mm"))
		for _, style := range []length.Style{length.Centimetres, length.Inches} {
			step := 0.1
			switch v := math.Abs(float64(m)); {
			case style == length.Inches && v > 12*25.4:
				step = 25.4 / 8
			case style == length.Inches:
				step = 25.4 / 16
			case v >= 99.75:
				step = 1
			case v >= 9.95:
				step = 0.5
			}
			s := length.Format(m, style)
			back, err := length.Parse(s)
			if err != nil {
				t.Fatalf("%v is written %q, which does not read back: %v", m, s, err)
			}
			if math.Abs(float64(back-m)) > step/2+1e-9 {
				t.Fatalf("%v is written %q and reads back as %v", m, s, back)
			}
			if again := length.Format(back, style); again != s {
				t.Fatalf("%q reads back and is written %q", s, again)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"15 mm", "1 5/8 in", "1 ⅝ in", "1⁵⁄₁₆ in", "-3 mm", "1,5 cm", "", "5", "1/0 in", `5/8"`, "\xff", "1-5/8 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		m, err := length.Parse(s)
		if err != nil {
			if m != 0 {
				t.Fatalf("Parse(%q) gave %v beside an error", s, m)
			}
			return
		}
		if math.IsNaN(float64(m)) || math.Abs(float64(m)) > float64(length.Longest) {
			t.Fatalf("Parse(%q) = %v", s, m)
		}
		for _, style := range []length.Style{length.Centimetres, length.Inches} {
			w := length.Format(m, style)
			if _, err := length.Parse(w); err != nil {
				t.Fatalf("Parse(%q) = %v, written %q, which fails: %v", s, m, w, err)
			}
		}
	})
}
