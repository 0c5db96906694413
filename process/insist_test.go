package process_test

import (
	"errors"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/seams/length"
	"bodkin/templates"
)

func pair(key, value string) form.Pair[form.Text] {
	at := form.Place{File: "job.yaml", Line: 7, Column: 3}
	return form.Pair[form.Text]{Key: form.Text{Value: key, At: at}, Value: form.Text{Value: value, At: at}}
}

func TestInsisting(t *testing.T) {
	shelf := loadShelf(t)
	work := func(cloth, seam, wish string, room *process.Workroom) (*process.Plan, error) {
		g, err := templates.Load("pull-on-skirt")
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, cloth, "cotton-lawn")
		j.Seams = form.Pairs[form.Text]{pair(seam, wish)}
		return process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: room, Shelf: shelf}, order.Options{})
	}
	p, err := work("cotton-lawn", "side", "mock-french", rooms()[0])
	if err != nil {
		t.Fatal(err)
	}
	if s := p.Seams[0]; s.Construction != "mock-french" || !s.Insisted || s.Anyway {
		t.Errorf("got %s, insisted %v, anyway %v", s.Construction, s.Insisted, s.Anyway)
	}
	p, err = work("velvet", "side", "french anyway", rooms()[0])
	if err != nil {
		t.Fatal(err)
	}
	if s := p.Seams[0]; s.Construction != "french" || !s.Anyway || len(s.Against) == 0 {
		t.Errorf("got %s, anyway %v, against %v", s.Construction, s.Anyway, s.Against)
	}

	tests := []struct {
		cloth, seam, wish string
		words             []string
		never             string // a word that must not be said
	}{
		{"velvet", "side", "french", []string{"job.yaml:7:3", "pile", "french anyway"}, "in this room"},
		{"cotton-lawn", "side", "plain-open-overlocked", []string{"job.yaml:7:3", "504", "in this room", "left to itself"}, "anyway"},
		{"cotton-lawn", "side", "plain-open-overlocked anyway", []string{"job.yaml:7:3", "504", "machine"}, "anyway"},
		{"cotton-lawn", "side", "frensh", []string{"job.yaml:7:3", "frensh", `"french"`}, "anyway"},
		{"cotton-lawn", "sid", "french", []string{"job.yaml:7:3", `"sid"`, `"side"`}, "anyway"},
	}
	for _, tt := range tests {
		_, err := work(tt.cloth, tt.seam, tt.wish, rooms()[0])
		if _, ok := errors.AsType[form.Faults](err); !ok {
			t.Errorf("%s: %s in %s: not faults but %v", tt.seam, tt.wish, tt.cloth, err)
			continue
		}
		for _, w := range tt.words {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: %s in %s: %q does not say %q", tt.seam, tt.wish, tt.cloth, err.Error(), w)
			}
		}
		if strings.Contains(err.Error(), tt.never) {
			t.Errorf("%s: %s in %s: %q says %q", tt.seam, tt.wish, tt.cloth, err.Error(), tt.never)
		}
	}
}

// What the garment's own design asks for is held to the same rules as what the
// job asks for.
func TestInsistingByDesign(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		cloth, sew string
		words      []string // of the refusal; none where it is taken
		never      string
	}{
		{"cotton-lawn", "mock-french", nil, ""},
		{"velvet", "french anyway", nil, ""},
		{"velvet", "french", []string{"job.yaml:3:7", "design", "pile", "side: french anyway"}, "in this room"},
		{"cotton-lawn", "plain-open-overlocked", []string{"job.yaml:3:7", "design", "in this room", "504"}, "anyway"},
		{"cotton-lawn", "plain-open-overlocked anyway", []string{"job.yaml:3:7", "design", "in this room", "504"}, "anyway"},
		{"cotton-lawn", "frensh", []string{"job.yaml:3:7", "frensh", `"french"`}, "anyway"},
	} {
		g, err := templates.Load("pull-on-skirt")
		if err != nil {
			t.Fatal(err)
		}
		j := jobFor(g, tt.cloth, "cotton-lawn")
		j.Make.At = form.Place{File: "job.yaml", Line: 3, Column: 7}
		g.Seams[0].Sew = text(tt.sew)
		p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: rooms()[0], Shelf: shelf}, order.Options{})
		if tt.words == nil {
			if err != nil {
				t.Errorf("%s in %s: %v", tt.sew, tt.cloth, err)
			} else if s := p.Seams[0]; s.Construction != strings.Fields(tt.sew)[0] || !s.Insisted || s.Because[0] != "the garment's design asks for it" {
				t.Errorf("%s in %s: got %s, insisted %v because %q", tt.sew, tt.cloth, s.Construction, s.Insisted, s.Because)
			}
			continue
		}
		if _, ok := errors.AsType[form.Faults](err); !ok {
			t.Errorf("%s in %s: not faults but %v", tt.sew, tt.cloth, err)
			continue
		}
		for _, w := range tt.words {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s in %s: %q does not say %q", tt.sew, tt.cloth, err.Error(), w)
			}
		}
		if tt.never != "" && strings.Contains(err.Error(), tt.never) {
			t.Errorf("%s in %s: %q says %q", tt.sew, tt.cloth, err.Error(), tt.never)
		}
	}
}

func TestUnknownCloths(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("pull-on-skirt")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		job   func(*process.Job)
		words []string
	}{
		{func(j *process.Job) { j.Cloth[0].Value.Is = text("silk-georgete") }, []string{"silk-georgete", `"silk-georgette"`}},
		{func(j *process.Job) { j.Cloth[0].Key = text("mian") }, []string{"mian", `"main"`}},
		{func(j *process.Job) { j.Cloth = nil }, []string{"no cloth is named"}},
		{func(j *process.Job) { j.Size = append(j.Size, pair("hips", "98 cm")) }, []string{"hips", `"hip"`}},
		{func(j *process.Job) { j.Size = append(j.Size, pair("hip", "98")) }, []string{"unit"}},
		{func(j *process.Job) { j.Size = append(j.Size, pair("hip", "-98 cm")) }, []string{"job.yaml:7:3"}},
		{func(j *process.Job) { j.Size = append(j.Size, pair("hip", "9 m")) }, []string{"job.yaml:7:3"}},
		{func(j *process.Job) { j.Choices = append(j.Choices, pair("lenght", "60 cm")) }, []string{"lenght", `"length"`}},
	} {
		j := jobFor(g, "cotton-lawn", "cotton-lawn")
		tt.job(j)
		_, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: rooms()[0], Shelf: shelf}, order.Options{})
		if _, ok := errors.AsType[form.Faults](err); !ok {
			t.Errorf("%v: not faults but %v", tt.words, err)
			continue
		}
		if fs, _ := errors.AsType[form.Faults](err); len(fs) != 1 || strings.ToLower(fs[0].Message[:1]) != fs[0].Message[:1] {
			t.Errorf("%d faults, which should be one and start small: %v", len(fs), err)
		}
		for _, w := range tt.words {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%q does not say %q", err.Error(), w)
			}
		}
	}
	room := rooms()[0]
	room.Machines[0].Is = text("overlocker")
	if _, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: room, Shelf: shelf}, order.Options{}); err == nil || !strings.Contains(err.Error(), "overlocker-") {
		t.Errorf("an unknown machine: %v", err)
	}
	room = rooms()[0]
	room.House = append(room.House, form.Pair[length.MM]{Key: text("french_frst"), Value: 6})
	if _, err := process.Work(t.Context(), process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: room, Shelf: shelf}, order.Options{}); err == nil || !strings.Contains(err.Error(), `"french_first"`) {
		t.Errorf("an unknown house figure: %v", err)
	}
}
