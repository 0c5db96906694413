package process

import (
	"errors"
	"strings"
	"testing"

	"bodkin/seams/form"
)

// The two forms as the design states them.
const (
	jobText = `make: shell-top
title: Choir top, soprano row
size: {bust: 92 cm, hip: 98 cm}
choices: {length: 62 cm}
cloth:
  main:    {is: silk-georgette, colour: sea green, width: 114 cm}
  binding: {is: silk-satin, colour: ink, width: 140 cm}
seams: {side: french}
quantity: 1
notes: |
  Markdown of her own.
`
	roomText = `name: Parish hall
units: cm
machines:
  - {is: straight-stitcher}
iron: steam
`
)

func TestParseJob(t *testing.T) {
	j, err := ParseJob("job.yaml", []byte(jobText))
	if err != nil {
		t.Fatal(err)
	}
	binding, ok := j.Cloth.Get("binding")
	if !ok || binding.Width != 1400 || binding.Colour != "ink" {
		t.Errorf("binding: %+v", binding)
	}
	if j.Make.Value != "shell-top" || j.quantity() != 1 || !strings.HasPrefix(j.Notes, "Markdown") {
		t.Errorf("got %+v", j)
	}
}

func TestParseFaults(t *testing.T) {
	job := func(data string) error { _, err := ParseJob("f.yaml", []byte(data)); return err }
	room := func(data string) error { _, err := ParseWorkroom("f.yaml", []byte(data)); return err }
	tests := []struct {
		name  string
		parse func(string) error
		data  string
		at    string
		words []string
	}{
		{"unknown key", job, "make: shell-top\nsixe: {bust: 92 cm}\n", "f.yaml:2:1", []string{"sixe", "size"}},
		{"no garment", job, "title: x\n", "f.yaml:1:1", []string{"make"}},
		{"cloth width without unit", job, "make: a\ncloth: {main: {is: b, width: 114}}\n", "f.yaml:2:", []string{"114", "unit"}},
		{"cloth width in a wrong unit", job, "make: a\ncloth: {main: {is: b, width: 114 cn}}\n", "f.yaml:2:", []string{"cm"}},
		{"no garments at all", job, "make: a\nquantity: 0\n", "f.yaml:2:11", []string{"whole number"}},
		{"favour misspelt", job, "make: a\nfavour: quik\n", "f.yaml:2:9", []string{"quick"}},
		{"three words for a seam", job, "make: a\nseams: {side: a b c}\n", "f.yaml:2:15", []string{"anyway"}},
		{"empty", job, "", "f.yaml", nil},
		{"not a mapping", job, "- a\n", "f.yaml:1:", nil},
		{"unknown room key", room, "name: x\nmachine: [a]\n", "f.yaml:2:1", []string{"machines"}},
		{"no such iron", room, "iron: steem\n", "f.yaml:1:7", []string{"steam"}},
		{"absurd house figure", room, "house: {plain: 3 m}\n", "f.yaml:1:", []string{"absurd"}},
		{"minutes in words", room, "minutes: {move: soon}\n", "f.yaml:1:17", []string{"minutes"}},
	}
	for _, tt := range tests {
		err := tt.parse(tt.data)
		if err == nil {
			t.Errorf("%s: accepted", tt.name)
			continue
		}
		fs, ok := errors.AsType[form.Faults](err)
		if !ok || len(fs) == 0 {
			t.Errorf("%s: not faults but %T: %v", tt.name, err, err)
			continue
		}
		if got := err.Error(); !strings.Contains(got, tt.at) {
			t.Errorf("%s: place %q is not in %q", tt.name, tt.at, got)
		}
		for _, w := range tt.words {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: %q is not in %q", tt.name, w, err.Error())
			}
		}
	}
}

func FuzzParseJob(f *testing.F) {
	f.Add([]byte(jobText))
	f.Add([]byte("make: a\ncloth: {main: {is: b, width: 1 5/8 in}}\n"))
	f.Add([]byte("make: a\ncloth: {main: {like: b, weight: 60 g/m2, stretch: {across: 5 %}, under: c}}\n"))
	f.Add([]byte("make: &a b\nsize: *a\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := ParseJob("f.yaml", data)
		if (j == nil) == (err == nil) {
			t.Fatalf("job %v with error %v", j, err)
		}
	})
}

func FuzzParseWorkroom(f *testing.F) {
	f.Add([]byte(roomText))
	f.Fuzz(func(t *testing.T, data []byte) {
		w, err := ParseWorkroom("f.yaml", data)
		if (w == nil) == (err == nil) {
			t.Fatalf("workroom %v with error %v", w, err)
		}
	})
}
