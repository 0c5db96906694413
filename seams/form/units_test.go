package form_test

import (
	"errors"
	"testing"

	"bodkin/seams/form"
)

// A number may carry its unit; what one unit is of another is the tag's say.
func TestUnits(t *testing.T) {
	type cloth struct {
		Weight float64    `yaml:"weight" units:"g/m2=1 oz/yd2=33.906"`
		Keys   *form.Node `yaml:",node"`
	}
	for _, row := range []struct {
		value string
		want  float64
		fault string
	}{
		{"60", 60, ""},
		{"60 g/m2", 60, ""},
		{"60g/m2", 60, ""},
		{"2.5 oz/yd2", 2.5 * 33.906, ""},
		{"60 g", 0, `f.yaml:1:9: "g" is no unit here; the units are g/m2, oz/yd2; the first where none is written`},
		{"60 g/m", 0, `f.yaml:1:9: "g/m" is no unit here; did you mean "g/m2"?; the units are g/m2, oz/yd2; the first where none is written`},
		{"heavy", 0, `f.yaml:1:9: a number is wanted here, not "heavy"`},
		{"1,5 g/m2", 0, `f.yaml:1:9: a number has a comma; write a decimal with a point: 1.5`},
		{"[60]", 0, `f.yaml:1:9: a number is wanted here, not a list; where words start with a bracket or brace, put them in quotes`},
	} {
		var c cloth
		err := form.Decode("f.yaml", []byte("weight: "+row.value+"\n"), &c)
		if row.fault == "" {
			if err != nil || c.Weight != row.want || len(c.Keys.Keys()) != 1 {
				t.Errorf("%s: %v, %v", row.value, c.Weight, err)
			}
			continue
		}
		if fs, ok := errors.AsType[form.Faults](err); !ok || fs[0].Error() != row.fault || c.Weight != 0 {
			t.Errorf("%s: %v\nwant %s", row.value, err, row.fault)
		}
	}
}

func TestOnly(t *testing.T) {
	n, err := form.Parse("f.yaml", []byte("a: 1\nb: 2\nc: 3\n"))
	if err != nil {
		t.Fatal(err)
	}
	only := n.Only("c", "a", "z")
	if k := only.Keys(); len(k) != 2 || k[0].Value != "a" || k[1].Value != "c" || len(n.Keys()) != 3 {
		t.Errorf("%v of %v", k, n.Keys())
	}
}
