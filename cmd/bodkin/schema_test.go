package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/templates"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// compiled is a schema as the command prints it, read by a validator that is
// not ours. The validator also checks the schema against that of the standard.
func compiled(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(must(t, "schema", name)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(name+".json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// fits is what the validator says of a file of YAML or JSON.
func fits(t *testing.T, s *jsonschema.Schema, text string) error {
	t.Helper()
	var v any
	if err := yaml.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return fitsJSON(t, s, string(b))
}

func fitsJSON(t *testing.T, s *jsonschema.Schema, text string) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

// Every garment of the shelf, the job that start writes for it and the plan of
// that job fit their schemas.
func TestShelfFitsSchemas(t *testing.T) {
	alone(t)
	garment, job, plan := compiled(t, "garment"), compiled(t, "job"), compiled(t, "plan")
	for _, name := range templates.Names() {
		text, file := templates.Text(name)
		if err := fits(t, garment, string(text)); err != nil {
			t.Errorf("%s: %v", file, err)
		}
		started := must(t, "start", name)
		if err := fits(t, job, started); err != nil {
			t.Errorf("job for %s: %v", name, err)
		}
		write(t, map[string]string{"job.yaml": started})
		must(t, "plan", "job.yaml", "--within", "0s", "-o", "plan.json")
		written, err := os.ReadFile("plan.json")
		if err != nil {
			t.Fatal(err)
		}
		if err := fitsJSON(t, plan, string(written)); err != nil {
			t.Errorf("plan of %s: %v", name, err)
		}
	}
}

// readmeYAML is the example of the README that begins with a key.
func readmeYAML(t *testing.T, begins string) string {
	t.Helper()
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(data), "```yaml\n"+begins)
	if !ok {
		t.Fatalf("the README has no example that begins with %q", begins)
	}
	text, _, _ := strings.Cut(rest, "```\n")
	return begins + text
}

func TestREADMEAndDemoFitSchemas(t *testing.T) {
	job, room := compiled(t, "job"), compiled(t, "workroom")
	for name, text := range map[string]string{"README": readmeYAML(t, "make:"), "demo": string(demoJob)} {
		if err := fits(t, job, text); err != nil {
			t.Errorf("job of the %s: %v", name, err)
		}
		if _, err := process.ParseJob("job.yaml", []byte(text)); err != nil {
			t.Errorf("job of the %s: %v", name, err)
		}
	}
	for name, text := range map[string]string{"README": readmeYAML(t, "name:"), "demo": string(demoWorkroom), "README's people": readmeYAML(t, "people:")} {
		if err := fits(t, room, text); err != nil {
			t.Errorf("workroom of the %s: %v", name, err)
		}
		if _, err := process.ParseWorkroom("room.yaml", []byte(text)); err != nil {
			t.Errorf("workroom of the %s: %v", name, err)
		}
	}
}

// What the schema refuses is refused by the reader too, and the other way round
// for slips of form.
func TestSchemasAndReadersAgree(t *testing.T) {
	job, room := compiled(t, "job"), compiled(t, "workroom")
	for _, c := range []struct {
		text string
		good bool
	}{
		{"make: shell-top", true},
		{"title: no garment", false},
		{"make: shell-top\nunits: furlong", false},
		{"make: shell-top\nunits: in", true},
		{"make: shell-top\nfavour: slow", false},
		{"make: shell-top\ncolour: red", false},
		{"make: shell-top\nsize: 92 cm", false},
		{"make: shell-top\nquantity: 3", true},
		{"make: shell-top\norder: side", false},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, weight: 60 g/m2}}", true},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, weight: 60}}", true},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, weight: 60 stone}}", false},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, sheerness: very}}", false},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, sheerness: 1.5}}", false},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, pile: \"true\"}}", false},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, structure: felted}}", false},
		{"make: shell-top\ncloth: {main: {like: cotton-lawn, stretch: {across: 20 %}}}", true},
	} {
		_, err := process.ParseJob("job.yaml", []byte(c.text+"\n"))
		if got := fits(t, job, c.text); (got == nil) != c.good || (err == nil) != c.good {
			t.Errorf("%s\nby the schema: %v\nby the reader: %v\nwant it good: %t", c.text, got, err, c.good)
		}
	}
	for _, c := range []struct {
		text string
		good bool
	}{
		{"machines: [{is: straight-stitcher, threaded: navy}]", true},
		{"machines: [straight-stitcher]", false},
		{"machines: [{name: By the window}]", false},
		{"iron: hot", false},
		{"minutes: {thread: 3}", true},
		{"minutes: {lunch: 3}", false},
	} {
		_, err := process.ParseWorkroom("room.yaml", []byte(c.text+"\n"))
		if got := fits(t, room, c.text); (got == nil) != c.good || (err == nil) != c.good {
			t.Errorf("%s\nby the schema: %v\nby the reader: %v\nwant it good: %t", c.text, got, err, c.good)
		}
	}
}

// A plan that lacks a key, has one too many, or another kind of value is
// refused.
func TestPlanSchemaRefuses(t *testing.T) {
	alone(t)
	plan := compiled(t, "plan")
	must(t, "plan", "--within", "0s", "-o", "plan.json")
	written, err := os.ReadFile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := fitsJSON(t, plan, string(written)); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(map[string]any){
		"no steps":          func(p map[string]any) { delete(p, "steps") },
		"another schema":    func(p map[string]any) { p["schema"] = "bodkin-plan-0" },
		"a key too many":    func(p map[string]any) { p["price"] = 3 },
		"null for a list":   func(p map[string]any) { p["pieces"] = nil },
		"words for minutes": func(p map[string]any) { p["operations"].([]any)[0].(map[string]any)["minutes"] = "three" },
	} {
		var p map[string]any
		if err := json.Unmarshal(written, &p); err != nil {
			t.Fatal(err)
		}
		spoil(p)
		b, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		if fitsJSON(t, plan, string(b)) == nil {
			t.Errorf("%s: not refused", name)
		}
	}
}

// Every form that is offered has a schema, and a sound one.
func TestEveryFormHasASchema(t *testing.T) {
	for _, form := range schemaForms() {
		compiled(t, form)
	}
}

// The plans that the sheets are tried on are of the form that is written today.
func TestPlansOfTheSheetsFitSchema(t *testing.T) {
	schema := compiled(t, "plan")
	for _, name := range []string{"open-coat", "shell-top"} {
		file := "../../sheets/testdata/" + name + ".json"
		if *update {
			var p process.Plan
			if err := json.Unmarshal([]byte(read(t, file)), &p); err != nil {
				t.Fatal(err)
			}
			emptied(reflect.ValueOf(&p).Elem())
			var out bytes.Buffer
			if err := writeJSON(&out, &p); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if err := fitsJSON(t, schema, read(t, file)); err != nil {
			t.Errorf("%s (go test ./cmd/bodkin -run PlansOfTheSheets -update adds keys): %v", name, err)
		}
	}
}

// emptied makes nil slices empty, as those of a plan are, but for those that stand
// in its JSON only where there is something in them.
func emptied(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if tag := v.Type().Field(i).Tag.Get("json"); !v.Field(i).IsZero() || !strings.HasSuffix(tag, ",omitempty") {
				emptied(v.Field(i))
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			emptied(v.Elem())
		}
	case reflect.Slice:
		if v.IsNil() {
			v.Set(reflect.MakeSlice(v.Type(), 0, 0))
		}
		for i := range v.Len() {
			emptied(v.Index(i))
		}
	}
}

// The README's class fits the schema of a class file, and the class in step that
// is planned from it that of its JSON, which refuses a key too many.
func TestClassFitsSchemas(t *testing.T) {
	written := readmeYAML(t, "class:")
	alone(t)
	if err := fits(t, compiled(t, "class"), written); err != nil {
		t.Errorf("class of the README: %v", err)
	}
	write(t, map[string]string{"class.yaml": written})
	must(t, "class", "class.yaml", "--within", "0s", "-o", "class.json")
	planned, s := read(t, "class.json"), compiled(t, "class-plan")
	if err := fitsJSON(t, s, planned); err != nil {
		t.Error(err)
	}
	if fitsJSON(t, s, strings.Replace(planned, "{", `{"price": 3, `, 1)) == nil {
		t.Error("a key too many is not refused")
	}
}

// Work shared among people and two plans side by side fit their schemas, which
// refuse a key too many.
func TestShareAndComparisonFitSchemas(t *testing.T) {
	alone(t)
	write(t, map[string]string{
		"job.yaml": must(t, "start", "shell-top"),
		"hall.yaml": `machines: [{is: straight-stitcher}]
iron: steam
people:
  - {name: Ada, can: {press: 3, cut: 3, pin: 3, straight: 3, curves: 3, delicate: 3, hand: 3, fitting: 3}, from: "9:00", until: "17:00"}
`})
	must(t, "share", "job.yaml", "--workroom", "hall.yaml", "--within", "0s", "-o", "share.json")
	shared, err := os.ReadFile("share.json")
	if err != nil {
		t.Fatal(err)
	}
	for form, written := range map[string]string{
		"share":      string(shared),
		"comparison": must(t, "compare", "job.yaml", "--with", "overlocker-4", "--within", "0s", "--json"),
		"sitting":    must(t, "sitting", "job.yaml", "job.yaml", "--within", "0s", "--json"),
	} {
		s := compiled(t, form)
		if err := fitsJSON(t, s, written); err != nil {
			t.Errorf("%s: %v", form, err)
		}
		if fitsJSON(t, s, strings.Replace(written, "{", `{"price": 3, `, 1)) == nil {
			t.Errorf("%s: a key too many is not refused", form)
		}
	}
}

// Every file of the shelf fits the schema, which refuses what the reader of the
// shelf refuses for its form.
func TestShelfFilesFitSchema(t *testing.T) {
	shelf := compiled(t, "shelf")
	var files []string
	for _, pattern := range []string{"*.yaml", "constructions/*.yaml"} {
		names, err := filepath.Glob(filepath.Join("../../seams/shelf", pattern))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, names...)
	}
	if len(files) < 20 {
		t.Fatalf("%d files on the shelf", len(files))
	}
	for _, name := range files {
		if err := fits(t, shelf, read(t, name)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, c := range []struct {
		text string
		good bool
	}{
		{"- {cloth: mine, like: cotton-lawn, weight: 70, source: my own}", true},
		{"- {machine: mine, title: Mine, kind: machine, forms: [\"301\"], speed: 400, max_thickness: 5, threads: 1, feet: [foot], source: my own}", true},
		{"- {cloth: mine, like: cotton-lawn, source: my own, structure: felted}", false},
		{"- {cloth: mine, like: cotton-lawn, source: my own, weight: heavy}", false},
		{"- {cloth: mine, like: cotton-lawn, source: my own, wieght: 70}", false},
		{"- {button: mine, source: my own}", false},
		{"cloth: mine", false},
	} {
		_, err := seams.Load(seams.File{Name: "mine.yaml", Data: []byte(c.text + "\n")})
		if got := fits(t, shelf, c.text); (got == nil) != c.good || (err == nil) != c.good {
			t.Errorf("%s\nby the schema: %v\nby the reader: %v\nwant it good: %t", c.text, got, err, c.good)
		}
	}
}
