package seams_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"bodkin/seams"
	"bodkin/seams/form"
)

func told(t testing.TB, s *seams.Shelf, yaml string) (seams.Cloth, error) {
	t.Helper()
	n, err := form.Parse("job.yaml", []byte(yaml))
	if err != nil {
		t.Fatal(err)
	}
	like, _ := n.At("like").Text()
	return s.Tell(seams.Told{Name: "own-main", Like: like, Keys: n, Source: "as the job tells it"})
}

func TestTell(t *testing.T) {
	s := load(t)
	lawn := mustCloth(t, s, "cotton-lawn")
	c, err := told(t, s, "like: cotton-lawn\nweight: 60 g/m2\nstretch: {across: 5 %}\n")
	if err != nil {
		t.Fatal(err)
	}
	if c.Title != "Cloth like cotton lawn" || c.Weight != 60 || !near(c.Thickness, lawn.Thickness*60/lawn.Weight, 1e-12) ||
		c.Stretch.Across != 5 || c.Stretch.Along != lawn.Stretch.Along || !slices.Equal(c.Widths, lawn.Widths) {
		t.Errorf("%+v", c)
	}
	if slices.Contains(c.Inferred, "weight") || !slices.Contains(c.Inferred, "thickness") || !slices.Contains(c.Inferred, "widths") {
		t.Errorf("inferred %v", c.Inferred)
	}
	// 8 oz/yd² at 33.906 g/m² to the ounce: arithmetic of the definitions (28.3495 g, 0.836127 m²).
	c, err = s.Tell(seams.Told{Name: "own-main", Width: 1500, Source: "s", Keys: keysOf(t,
		"fibre: cotton\nstructure: woven\nweight: 8 oz/yd2\nthickness: 0.06 cm\nheat_dots: 3\n")})
	if err != nil || c.Title != "Woven cotton" || !near(c.Weight, 8*28.3495/0.836127, 0.01) || !near(c.Thickness, 0.6, 1e-12) || c.Inferred != nil {
		t.Errorf("%+v, %v", c, err)
	}
	for _, row := range []struct{ yaml, want string }{
		{"like: cotton-lwan\n", `job.yaml:1:7: no cloth "cotton-lwan" on the shelf; did you mean "cotton-lawn"?`},
		{"like: cotton-lawn\nweight: 60 kg\n", `job.yaml:2:9: "kg" is no unit here; the units are g/m2`},
		{"like: cotton-lawn\nweight: heavy\n", `job.yaml:2:9: a number is wanted here, not "heavy"`},
		{"like: cotton-lawn\nweight: 3000\n", "job.yaml:2:9: weight must be from 5 to 2000"},
		{"like: cotton-lawn\nstructure: weaved\n", `job.yaml:2:12: "weaved" is not one of woven, knit, nonwoven`},
		{"fibre: silk\nstructure: woven\nweight: 60\nthickness: 0.2\n", `job.yaml:1:1: the key "heat_dots" is missing`},
		{"fibre: silk\nstructure: woven\nweight: 60\nthickness: 0.2\nheat_dots: 1\n", `job.yaml:1:1: the key "width" is missing`},
	} {
		_, err := told(t, s, row.yaml)
		fs, ok := errors.AsType[form.Faults](err)
		if !ok || len(fs) != 1 || !strings.HasPrefix(fs[0].Error(), row.want) {
			t.Errorf("%q: %v\nwant %s", row.yaml, err, row.want)
		}
	}
}

func keysOf(t testing.TB, yaml string) *form.Node {
	t.Helper()
	n, err := form.Parse("job.yaml", []byte(yaml))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// A figure on the shelf may carry its unit, and the user's entries are known.
func TestOwnClothWithUnits(t *testing.T) {
	s := load(t, seams.File{Name: "mine.yaml", Data: []byte("- {cloth: a, like: cotton-lawn, weight: 60 g/m2, thickness: 0.2 mm, source: weighed}\n")})
	if a := mustCloth(t, s, "a"); a.Weight != 60 || a.Thickness != 0.2 || !a.Own {
		t.Errorf("%+v", a)
	}
	if mustCloth(t, s, "cotton-lawn").Own {
		t.Error("the shelf's own lawn is taken for the user's")
	}
}

// A cloth that is like one of the shelf, and of which nothing differs, is judged
// as that one is.
func TestTellNothing(t *testing.T) {
	s := load(t)
	for _, c := range s.Cloths {
		same, err := told(t, s, "like: "+c.Name+"\ncolour: red\n")
		if err != nil || same.Facts() != c.Facts() || same.Shrinkage != c.Shrinkage || !slices.Equal(same.Widths, c.Widths) {
			t.Errorf("like %s: %+v, %v", c.Name, same, err)
		}
	}
}
