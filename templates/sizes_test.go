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
// it does not have is reckoned or asked for.
func TestMeasuresGoBeforeTheTable(t *testing.T) {
	m := makeIt(t, "a-line-skirt", pairs("named", "women-50", "waist", "78 cm", "hip_depth", "21 cm"), nil)
	for _, v := range m.Measures {
		from := ""
		if v.From != nil {
			from = v.From.Name
		}
		want := map[string]string{"waist": "78 false ", "hip": "101.8 false women-50", "hip_depth": "21 false "}[v.Name]
		if got := fmt.Sprintf("%g %v %s", float64(v.MM)/10, v.Default, from); got != want {
			t.Errorf("%s: %s, want %s", v.Name, got, want)
		}
	}
	for _, v := range makeIt(t, "darted-trousers", pairs("named", "women-50"), nil).Measures {
		if v.Name == "rise" && (!v.Default || v.From != nil) {
			t.Errorf("the rise is not reckoned but %+v", v)
		}
	}
	for size, want := range map[string]string{"women-50": `does not tell the measure "hip_depth"`, "women-51": `no size "women-51"`, "de-38": "has none of the measures of this garment"} {
		_, err := load(t, "pull-on-skirt").Make(pairs("named", size), nil)
		if f, ok := errors.AsType[form.Faults](err); !ok || !strings.Contains(f[0].Message, want) {
			t.Errorf("%s: %v", size, err)
		}
	}
}

// Every garment for adults is made in some named sizes of each kind, once what they
// do not tell is measured, and refused before that and where the size lies outside
// its range. The garments take the sizes in turn, so that each size has some.
func TestGarmentsInNamedSizes(t *testing.T) {
	list, err := templates.Sizes()
	if err != nil {
		t.Fatal(err)
	}
	const apart = 5
	for i, name := range templates.Names() {
		g := load(t, name)
		for k := i % apart; k < len(list) && !g.Child; k += apart {
			if len(g.Asks(list[k])) < len(g.Measures) {
				inNamedSize(t, g, list[k])
			}
		}
	}
}

func inNamedSize(t *testing.T, g *templates.Garment, s templates.NamedSize) {
	t.Helper()
	size := pairs("named", s.Name)
	asks := g.Asks(s)
	within, some := true, false
	for _, p := range s.Measures {
		if m, wanted := g.Measures.Get(p.Key.Value); wanted {
			some = true
			within = within && p.Value >= m.Least && p.Value <= m.Most
		}
	}
	if !some {
		return // a table of none of its measures, refused in its own words
	}
	if _, err := g.Make(size, nil); len(asks) > 0 && (err == nil || within && !strings.Contains(err.Error(), "does not tell the measure")) {
		t.Errorf("%s in %s without %v: %v", g.Name, s.Name, asks, err)
	}
	for _, asked := range asks {
		m, _ := g.Measures.Get(asked)
		taken := m.Default
		if bust, ok := s.Measures.Get("bust"); ok { // a shape of our own
			switch asked {
			case "waist":
				taken = bust - 160
			case "hip":
				taken = bust + 60
			}
		}
		size = append(size, pairs(asked, fmt.Sprintf("%g mm", float64(taken)))...)
	}
	made, err := g.Make(size, nil)
	switch {
	case !within && (err == nil || !strings.Contains(err.Error(), "that is the figure of size "+s.Name)):
		t.Errorf("%s in %s, outside its range: %v", g.Name, s.Name, err)
	case within && err != nil:
		t.Errorf("%s in %s: %v", g.Name, s.Name, err)
	case within:
		checkLaws(t, made)
	}
}
