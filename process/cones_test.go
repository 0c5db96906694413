package process_test

import (
	"slices"
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// An overlocker needs as many cones as its stitch has threads: three for 504 (one
// needle, two loopers), four for 514 (ISO 4915 class 500: an agricultural
// e-course on stitch classes). Where there are fewer of the seam's colour its
// loopers take another on rows that are hidden, and the row says why; where that
// cannot be, what is lacking is told. Metres follow the threads.
func TestConesOfAColour(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("shell-top")
	if err != nil {
		t.Fatal(err)
	}
	work := func(cones ...any) *process.Plan {
		j := jobFor(g, "quilting-cotton", "cotton-lawn")
		j.Seams = form.Pairs[form.Text]{{Key: text("side"), Value: text("plain-together-overlocked")}}
		for k := 0; k < len(cones); k += 2 {
			j.Cones = append(j.Cones, form.Pair[int]{Key: text(cones[k].(string)), Value: cones[k+1].(int)})
		}
		w := roomOf("steam", "straight-stitcher", "overlocker-3")
		p := plan(t, j, w, shelf)
		checkOrder(t, p)
		checkWords(t, p)
		return p
	}
	overlocked := func(p *process.Plan) process.Operation {
		return p.Operations[slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.Seam == "side" && o.Setting.Stitch == "504" })]
	}
	metres := func(p *process.Plan, colour string) (m float64) {
		for _, x := range p.Thread {
			if x.Colour == colour {
				m += x.Metres
			}
		}
		return m
	}
	free := work()
	own := overlocked(free).Setting.Thread
	for _, tt := range []struct {
		name    string
		cones   []any
		loopers string
		lacking string
	}{
		{"nobody counted", nil, own, ""},
		{"enough", []any{own, 3, "white", 4}, own, ""},
		{"one, and four white", []any{own, 1, "white", 4, "grey", 2}, "white", ""},
		{"one, and two grey", []any{own, 1, "grey", 2}, "grey", ""},
		{"one, and no other", []any{own, 1, "grey", 1}, own, "no other colour has cones enough for the loopers"},
		{"none", []any{"white", 4}, own, "too few for the needles alone"},
	} {
		p := work(tt.cones...)
		o := overlocked(p)
		if o.Setting.Thread != own || o.Setting.Loopers != tt.loopers || strings.Contains(o.Text, "Thread the loopers with") != (tt.loopers != own) {
			t.Errorf("%s: %s, loopers %q: %s", tt.name, o.Setting.Thread, o.Setting.Loopers, o.Text)
		}
		said := slices.ContainsFunc(p.Notices, func(n process.Notice) bool {
			return strings.Contains(n.Text, "takes 3 cones of "+own) && strings.Contains(n.Text, tt.lacking)
		})
		if said != (tt.lacking != "") {
			t.Errorf("%s: lacking cones told: %v", tt.name, said)
		}
		if tt.loopers != own && (metres(p, tt.loopers) <= 0 || metres(p, own) >= metres(free, own)) {
			t.Errorf("%s: %g m of %s and %g of %s, all in one %g", tt.name, metres(p, tt.loopers), tt.loopers, metres(p, own), own, metres(free, own))
		}
	}
	// Through sheer cloth the row shows, and no other colour will do.
	j := jobFor(g, "silk-georgette", "cotton-lawn")
	j.Seams = form.Pairs[form.Text]{{Key: text("side"), Value: text("plain-together-overlocked anyway")}}
	j.Cones = form.Pairs[int]{{Key: text(own), Value: 1}, {Key: text("white"), Value: 4}}
	p := plan(t, j, roomOf("steam", "straight-stitcher", "overlocker-3"), shelf)
	if o := overlocked(p); o.Setting.Loopers != own {
		t.Errorf("in georgette the loopers are %s", o.Setting.Loopers)
	}
}

// Too few cones of a colour: the loopers take the nearest shade that has cones
// enough, as the job says or else the room; where neither names one, the most
// cones, and the words say on what the choice rests. Threads by ISO 4915: 514 two
// needles and two loopers (class 500), 516 those of 504 and of 401 beside it, 406
// two needles and one looper (class 400; the same e-course). The loopers' threads of a covering row lie
// underneath.
func TestLoopersTakeTheNearestShade(t *testing.T) {
	const said, unsaid = "is the nearest in shade", "Nobody has said which shade"
	near := func(colour string, others ...string) form.Pair[[]form.Text] {
		p := form.Pair[[]form.Text]{Key: text(colour)}
		for _, o := range others {
			p.Value = append(p.Value, text(o))
		}
		return p
	}
	const own = "reed green"
	counted := func(face, moss, grey, white int) form.Pairs[int] {
		return form.Pairs[int]{{Key: text(own), Value: face}, {Key: text("moss"), Value: moss}, {Key: text("grey"), Value: grey}, {Key: text("white"), Value: white}}
	}
	tests := []struct {
		name, line, construction, stitch string
		cones                            form.Pairs[int]
		job, room                        form.Pairs[[]form.Text]
		loopers, words                   string
	}{
		{"the nearest of two", "side", "plain-together-overlocked", "504", counted(1, 2, 2, 9), form.Pairs[[]form.Text]{near(own, "moss", "grey")}, nil, "moss", said},
		{"the nearest has too few", "side", "plain-together-overlocked", "504", counted(1, 1, 2, 9), form.Pairs[[]form.Text]{near(own, "moss", "grey")}, nil, "grey", said},
		{"said in the room", "side", "plain-together-overlocked", "504", counted(1, 2, 2, 9), nil, form.Pairs[[]form.Text]{near(own, "grey")}, "grey", said},
		{"the job over the room", "side", "plain-together-overlocked", "504", counted(1, 2, 2, 9), form.Pairs[[]form.Text]{near("Reed Green", "moss")}, form.Pairs[[]form.Text]{near(own, "grey")}, "moss", said},
		{"said of the other", "side", "plain-together-overlocked", "504", counted(1, 2, 2, 9), form.Pairs[[]form.Text]{near("moss", own)}, nil, "moss", said},
		{"of others only", "side", "plain-together-overlocked", "504", counted(1, 2, 2, 9), form.Pairs[[]form.Text]{near("navy", "ink")}, nil, "white", unsaid},
		{"no shade said", "side", "plain-together-overlocked", "504", counted(1, 2, 2, 9), nil, nil, "white", unsaid},
		{"two needles", "side", "overlocked-4", "514", counted(2, 2, 2, 9), form.Pairs[[]form.Text]{near(own, "grey")}, nil, "grey", said},
		{"two needles and one cone", "side", "overlocked-4", "514", counted(1, 2, 2, 9), form.Pairs[[]form.Text]{near(own, "grey")}, nil, own, ""},
		{"two needles and three cones", "side", "overlocked-4", "514", counted(3, 1, 2, 9), form.Pairs[[]form.Text]{near(own, "moss", "grey")}, nil, "grey", said},
		{"safety stitch wants three", "side", "safety-stitched", "516", counted(2, 2, 3, 9), form.Pairs[[]form.Text]{near(own, "moss", "grey")}, nil, "grey", said},
		{"one looper beneath", "hem", "coverstitched", "406", counted(2, 1, 2, 9), form.Pairs[[]form.Text]{near(own, "moss")}, nil, "moss", "their threads lie underneath"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			g := garmentOf(t, "pull-on-skirt")
			cloth := "cotton-jersey"
			if tt.stitch == "504" {
				cloth = "quilting-cotton"
			}
			j := jobFor(g, cloth, cloth)
			j.Seams = form.Pairs[form.Text]{pair(tt.line, tt.construction+" anyway")}
			j.Cones, j.Near = tt.cones, tt.job
			w := roomOf("steam", "zigzag-machine", "overlocker-3", "overlocker-4", "overlocker-5", "coverstitch")
			w.Near = tt.room
			p, err := process.Work(t.Context(), process.Input{Job: j, Garment: g, Workroom: w, Shelf: loadShelf(t)}, order.Options{Nodes: 20_000})
			if err != nil {
				t.Fatal(err)
			}
			k := slices.IndexFunc(p.Operations, func(o process.Operation) bool { return o.Seam == tt.line && o.Setting.Stitch == tt.stitch })
			if k < 0 {
				t.Fatalf("no row of stitch %s at the %s", tt.stitch, tt.line)
			}
			o := p.Operations[k]
			if o.Setting.Thread != own || o.Setting.Loopers != tt.loopers || !strings.Contains(o.Text, tt.words) {
				t.Errorf("%s, loopers %s, want %s: %s", o.Setting.Thread, o.Setting.Loopers, tt.loopers, o.Text)
			}
			checkCost(t, p, w, loadShelf(t))
		})
	}
}

func TestWrongShades(t *testing.T) {
	for _, tt := range []struct{ near, want string }{
		{"near: {navy: [ink, Navy]}", ":2:20: Navy is near itself"},
		{"near: {navy: [ink, grey, ink]}", ":2:26: ink stands twice"},
	} {
		_, err := process.ParseJob("job.yaml", []byte("make: shell-top\n"+tt.near+"\n"))
		if err == nil || !strings.Contains(err.Error(), "job.yaml"+tt.want) {
			t.Errorf("job, %s: error %v, want %q", tt.near, err, tt.want)
		}
		_, err = process.ParseWorkroom("room.yaml", []byte("name: Room\n"+tt.near+"\n"))
		if err == nil || !strings.Contains(err.Error(), "room.yaml"+tt.want) {
			t.Errorf("room, %s: error %v, want %q", tt.near, err, tt.want)
		}
	}
}
