package templates_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

// TestNamedSizes: the percentiles are those of ANSUR II (US Army, 2012, reckoned
// from the public release); JIS 9AR is bust 83 and hip 91, with bust by 3 cm and
// hip by 2 cm from size to size (JIS L 4005); a German size is bust / 2 - 6.
func TestNamedSizes(t *testing.T) {
	list, err := templates.Sizes()
	if err != nil {
		t.Fatal(err)
	}
	have := map[string]form.Pairs[length.MM]{}
	for _, s := range list {
		if s.Source == "" || s.Title == "" {
			t.Errorf("%s has no source or title", s.Name)
		}
		have[s.Name] = s.Measures
	}
	check := func(name, measure string, want float64) {
		t.Helper()
		got, ok := have[name].Get(measure)
		near(t, name+" "+measure, float64(got), want, 0.05)
		if !ok {
			t.Errorf("%s has no %s", name, measure)
		}
	}
	for who, table := range map[string]map[string][3]string{"women": womenMeasured, "men": menMeasured} {
		for measure, cm := range table {
			for k, p := range []int{5, 50, 95} {
				check(fmt.Sprintf("%s-%d", who, p), measure, millimetres(t, form.Text{Value: cm[k]}))
			}
		}
	}
	for k := range 7 {
		name := fmt.Sprintf("jis-%dar", 3+2*k)
		check(name, "bust", 830+30*float64(k-3))
		check(name, "hip", 910+20*float64(k-3))
	}
	for n := 34; n <= 44; n += 2 {
		check(fmt.Sprintf("de-%d", n), "bust", 20*float64(n+6))
	}
}

// TestMeasuresGoBeforeTheTable: what is given stays, the table fills in, and what
// it does not have is the garment's own.
func TestMeasuresGoBeforeTheTable(t *testing.T) {
	m := makeIt(t, "a-line-skirt", pairs("named", "women-50", "waist", "78 cm"), nil)
	for _, v := range m.Measures {
		from := ""
		if v.From != nil {
			from = v.From.Name
		}
		want := map[string]string{"waist": "78 false ", "hip": "101.8 false women-50", "hip_depth": "20 true "}[v.Name]
		if got := fmt.Sprintf("%g %v %s", float64(v.MM)/10, v.Default, from); got != want {
			t.Errorf("%s: %s, want %s", v.Name, got, want)
		}
	}
	for size, want := range map[string]string{"women-51": `no size "women-51"`, "de-38": "has none of the measures of this garment"} {
		_, err := load(t, "pull-on-skirt").Make(pairs("named", size), nil)
		if f, ok := errors.AsType[form.Faults](err); !ok || !strings.Contains(f[0].Message, want) {
			t.Errorf("%s: %v", size, err)
		}
	}
}
