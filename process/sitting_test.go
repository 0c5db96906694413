package process_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/form"
	"bodkin/templates"
)

// A sitting has every operation of each garment once, keeps all that they wait
// for, and costs no more than one garment after the other; with two alike
// garments in two colours no colour is threaded more often than for one.
func TestSitting(t *testing.T) {
	shelf := loadShelf(t)
	for _, tt := range []struct {
		garments []string
		machines []string
	}{
		{[]string{"shell-top", "shell-top"}, []string{"straight-stitcher"}},
		{[]string{"shell-top", "pull-on-skirt"}, []string{"straight-stitcher", "overlocker-3"}},
		{[]string{"shell-top", "open-jacket"}, []string{"straight-stitcher", "straight-stitcher"}},
		{[]string{"apron", "pull-on-skirt", "circle-skirt"}, []string{"straight-stitcher"}},
	} {
		name := strings.Join(tt.garments, " and ")
		w := roomOf("steam", tt.machines...)
		var ins []process.Input
		for _, garment := range tt.garments {
			g, err := templates.Load(garment)
			if err != nil {
				t.Fatal(err)
			}
			ins = append(ins, process.Input{Job: jobFor(g, "cotton-lawn", "cotton-lawn"), Garment: g, Workroom: w, Shelf: shelf})
		}
		s, err := process.Sit(t.Context(), ins, nil, order.Options{Nodes: 50_000})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		joint := &process.Plan{Stations: s.Stations, Operations: s.Operations, Steps: s.Steps, Changes: s.Changes,
			Checks: s.Checks, Order: s.Order, Totals: s.Totals, Quantity: 1}
		checkOrder(t, joint)
		checkCost(t, joint, w, shelf)
		winding := 0.0
		for _, b := range s.Bobbins {
			winding += b.Minutes
		}
		if winding == 0 || s.Totals.WindMinutes != winding {
			t.Errorf("%s: winding takes %g minutes in all, the bobbins %g", name, s.Totals.WindMinutes, winding)
		}
		var have, want []string
		for _, o := range s.Operations {
			if o.Does != "test" || o.Seam != "" {
				have = append(have, o.ID)
			}
		}
		checks := 0
		for k, g := range s.Garments {
			for _, o := range g.Plan.Operations {
				if o.Does != "test" || o.Seam != "" {
					want = append(want, string(rune('1'+k))+"/"+o.ID)
				}
			}
			checks += len(g.Plan.Checks)
		}
		slices.Sort(have)
		slices.Sort(want)
		if !slices.Equal(have, want) {
			t.Errorf("%s: operations %v, want %v", name, have, want)
		}
		if len(s.Checks) != checks {
			t.Errorf("%s: %d checks, want %d", name, len(s.Checks), checks)
		}
		if s.Order.ChangeMinutes > s.InTurn+1e-6 && s.Order.Proved {
			t.Errorf("%s: %.2f minutes of change together, %.2f in turn", name, s.Order.ChangeMinutes, s.InTurn)
		}
		if tt.garments[0] == tt.garments[1] && s.Totals.ThreadChanges > s.Garments[0].Plan.Totals.ThreadChanges {
			t.Errorf("%s: %d changes of thread, %d for one", name, s.Totals.ThreadChanges, s.Garments[0].Plan.Totals.ThreadChanges)
		}
		if s.Garments[0].Label == s.Garments[1].Label {
			t.Errorf("%s: both are called %q", name, s.Garments[0].Label)
		}
	}
}

// sittingOf is a sitting of jobs in a room.
func sittingOf(t *testing.T, room string, begun *process.Begun, jobs ...string) (*process.Sitting, error) {
	t.Helper()
	w, err := process.ParseWorkroom("room.yaml", []byte(room+"\n"))
	if err != nil {
		t.Fatal(err)
	}
	shelf := loadShelf(t)
	var ins []process.Input
	for k, text := range jobs {
		j, err := process.ParseJob(string(rune('a'+k))+".yaml", []byte(text+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		g, err := templates.Load(j.Make.Value)
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf})
	}
	return process.Sit(t.Context(), ins, begun, order.Options{Nodes: 20_000})
}

func mustSit(t *testing.T, room string, begun *process.Begun, jobs ...string) *process.Sitting {
	t.Helper()
	s, err := sittingOf(t, room, begun, jobs...)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

const (
	oneStitcher = "machines: [{is: straight-stitcher}]\niron: steam"
	lakeTop     = "make: shell-top\ntitle: Lake top\ncloth: {main: {is: cotton-lawn, colour: grey, width: 114 cm}, binding: {is: cotton-lawn, colour: white, width: 114 cm}}"
	lakeSkirt   = "make: pull-on-skirt\ntitle: Lake skirt\ncloth: {main: {is: cotton-lawn, colour: white, width: 114 cm}}"
)

// before reports whether all the work on one line of a sitting is done before the
// other is begun.
func before(s *process.Sitting, first, then string) bool {
	last, begin := -1, len(s.Operations)
	for at, o := range s.Operations {
		if o.Seam == first {
			last = at
		}
		if o.Seam == then && at < begin {
			begin = at
		}
	}
	return last < begin
}

// What a job pins and orders is kept within its garment, beside that of another
// job, and priced.
func TestSittingKeepsPins(t *testing.T) {
	for _, tt := range []struct{ top, skirt string }{
		{"pins: [side before shoulder]", "pins: [waist before hem]"},
		{"pins: [shoulder before side]", "pins: [hem before waist]"},
		{"order: [shoulder, side]", "pins: [waist before hem]"},
	} {
		s := mustSit(t, oneStitcher, nil, lakeTop+"\n"+tt.top, lakeSkirt+"\n"+tt.skirt)
		wants := [][2]string{{"1/side", "1/shoulder"}, {"2/waist", "2/hem"}}
		if strings.Contains(tt.top, "[shoulder") {
			wants[0] = [2]string{"1/shoulder", "1/side"}
		}
		if strings.Contains(tt.skirt, "hem before") {
			wants[1] = [2]string{"2/hem", "2/waist"}
		}
		for _, w := range wants {
			if !before(s, w[0], w[1]) {
				t.Errorf("%s; %s: %s is not done before %s is begun", tt.top, tt.skirt, w[0], w[1])
			}
		}
		own := s.Order.Own
		if own == nil {
			t.Fatalf("%s; %s: what was asked for is not priced", tt.top, tt.skirt)
		}
		free := mustSit(t, oneStitcher, nil, lakeTop, lakeSkirt)
		if d := own.FreeMinutes - free.Order.ChangeMinutes; d > 1e-6 || d < -1e-6 {
			t.Errorf("without them the changes would take %.2f, and take %.2f", own.FreeMinutes, free.Order.ChangeMinutes)
		}
		if s.Order.ChangeMinutes < own.FreeMinutes-1e-6 {
			t.Errorf("pins make the changes less: %.2f for %.2f", s.Order.ChangeMinutes, own.FreeMinutes)
		}
	}
}

// An order that one garment forbids is kept elsewhere, and told with its garment.
func TestSittingTellsWhatItRefuses(t *testing.T) {
	s := mustSit(t, oneStitcher, nil, lakeTop, lakeSkirt+"\norder: [hem, side]")
	if own := s.Order.Own; own == nil || len(own.Refused) != 1 || own.Refused[0].First != "hem (Lake skirt)" ||
		!strings.HasPrefix(own.Refused[0].Because[0].Then, "2/") {
		t.Errorf("refused: %+v", s.Order.Own)
	}
	if !slices.ContainsFunc(s.Notices, func(n process.Notice) bool {
		return n.About == "your order" && strings.HasPrefix(n.Text, "Hem (Lake skirt) cannot come before side (Lake skirt): 2/hem.1 waits for 2/side.")
	}) {
		t.Errorf("the notices do not tell: %v", s.Notices)
	}
}

// Pins that contradict, in either job or in both, are faults at their places, all
// told together.
func TestSittingFaultsOfBothJobs(t *testing.T) {
	_, err := sittingOf(t, oneStitcher, nil, lakeTop+"\npins: [neck before armhole, armhole before neck]", lakeSkirt+"\npins: [waist before hem, hem before waist]")
	faults, ok := errors.AsType[form.Faults](err)
	if !ok || len(faults) != 2 || faults[0].File != "a.yaml" || faults[1].File != "b.yaml" {
		t.Fatalf("%v", err)
	}
	for k, want := range []string{"you pinned “neck before armhole”", "you pinned “waist before hem”"} {
		if !strings.Contains(faults[k].Error(), want) {
			t.Errorf("%v does not say %q", faults[k], want)
		}
	}
}

// A wish is weighed within its garment and told with it: of what is wished for in
// one, nothing is asked of the other.
func TestSittingWishes(t *testing.T) {
	s := mustSit(t, oneStitcher, nil, lakeTop+"\nwishes: {neck before armhole: 20}", lakeSkirt+"\nwishes: {waist before hem: 20, region: 0.5}")
	var got []string
	for _, w := range s.Order.Wishes {
		got = append(got, w.Wish)
		if w.Wish != "region" && !w.Kept {
			t.Errorf("%s, worth 20 minutes, is not kept", w.Wish)
		}
	}
	if d := cmp.Diff([]string{"neck before armhole (Lake top)", "waist before hem (Lake skirt)", "region"}, got); d != "" {
		t.Error(d)
	}
	for _, pair := range [][2]string{{"1/neck", "1/armhole"}, {"2/waist", "2/hem"}} {
		if !before(s, pair[0], pair[1]) {
			t.Errorf("%s is not done before %s", pair[0], pair[1])
		}
	}
}

// The machines are found and left as any of the jobs says, once for all: the last
// thread of the overlocker is white. Its cones are those that any job has counted.
func TestSittingSharesTheRoom(t *testing.T) {
	room := "machines: [{is: straight-stitcher}, {is: overlocker-3}]\niron: steam"
	s := mustSit(t, room, nil, lakeTop+"\nmachines: {overlocker-3: {threaded: grey, leave: white}}", strings.Replace(lakeSkirt, "colour: white", "colour: navy", 1)+"\ncones: {navy: 1, white: 4}")
	thread, leaving := "grey", 0
	for _, o := range s.Operations {
		if o.Station != "overlocker-3" {
			continue
		}
		thread = o.Setting.Thread
		if o.ID == "leave.overlocker-3" {
			leaving++
		}
		if strings.HasPrefix(o.ID, "2/") && o.Setting.Loopers != "white" {
			t.Errorf("%s: with one cone of navy its loopers are %q", o.ID, o.Setting.Loopers)
		}
	}
	if thread != "white" || leaving != 1 {
		t.Errorf("the overlocker is left with %s, %d times", thread, leaving)
	}
	joint := &process.Plan{Stations: s.Stations, Operations: s.Operations, Steps: s.Steps, Changes: s.Changes, Checks: s.Checks, Order: s.Order, Totals: s.Totals, Quantity: 1}
	checkOrder(t, joint)
	for _, c := range s.Changes {
		if c.Station == "overlocker-3" && c.What == "thread" && c.From == "" {
			t.Errorf("the overlocker holds grey, and before step %d it is threaded as if it held nothing", c.BeforeStep)
		}
	}
}

// What two jobs say of one room must agree; what is wrong is told at the later.
func TestSittingRoomDisagrees(t *testing.T) {
	room := "machines: [{is: overlocker-3, name: Red one}, {is: straight-stitcher}]\niron: steam"
	for _, tt := range []struct{ top, skirt, want string }{
		{"machines: {overlocker-3: {leave: white}}", "machines: {Red one: {leave: navy}}", "here the red one is to be left threaded with navy, and by a.yaml:4 it is white"},
		{"machines: {overlocker-3: {threaded: white}}", "machines: {overlocker-3: {threaded: navy}}", "here the red one is threaded with navy, and by a.yaml:4 it is white"},
		{"cones: {white: 1}", "cones: {White: 3}", "here 3 cones of White, and at a.yaml:4 1"},
		{"units: cm", "units: in", "this job's lengths would be in another unit than those of the first, which are in cm"},
	} {
		_, err := sittingOf(t, room, nil, lakeTop+"\n"+tt.top, lakeSkirt+"\n"+tt.skirt)
		faults, ok := errors.AsType[form.Faults](err)
		if !ok || len(faults) != 1 || faults[0].File != "b.yaml" || faults[0].Line != 4 || faults[0].Message != tt.want || faults[0].Mend == "" {
			t.Errorf("%s; %s: %v", tt.top, tt.skirt, err)
		}
	}
	for _, same := range []string{"machines: {overlocker-3: {leave: white}}", "cones: {white: 1}", "units: cm"} {
		mustSit(t, room, nil, lakeTop+"\n"+same, lakeSkirt+"\n"+same)
	}
}

// The rest of a sitting begun has what is not done, finds the machines as they were
// left and costs no more than it did within the whole.
func TestSittingBegun(t *testing.T) {
	whole := mustSit(t, oneStitcher, nil, lakeTop, lakeSkirt)
	for _, steps := range []int{1, len(whole.Steps) / 2, len(whole.Steps) - 1} {
		var done []string
		for _, st := range whole.Steps[:steps] {
			done = append(done, st.Operations...)
		}
		begun := whole.Joint().Begin(done)
		if len(begun.Also) > 0 {
			t.Fatalf("%d steps done, and besides %v", steps, begun.Also)
		}
		rest := mustSit(t, oneStitcher, begun, lakeTop, lakeSkirt)
		if len(rest.Operations)+len(done) != len(whole.Operations) {
			t.Errorf("after %d steps %d of %d operations are left", steps, len(rest.Operations), len(whole.Operations))
		}
		w, err := process.ParseWorkroom("room.yaml", []byte(oneStitcher+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		checkOrder(t, rest.Joint())
		checkCost(t, rest.Joint(), w, loadShelf(t))
		left := 0.0
		for _, c := range whole.Changes {
			if c.BeforeStep > steps {
				left += c.Minutes
			}
		}
		if !rest.Order.Proved || !whole.Order.Proved || rest.Order.ChangeMinutes > left+1e-6 {
			t.Errorf("after %d steps the rest takes %.2f minutes of change, proved %t; in the whole it took %.2f", steps, rest.Order.ChangeMinutes, rest.Order.Proved, left)
		}
	}
	var all []string
	for _, o := range whole.Operations {
		all = append(all, o.ID)
	}
	_, err := sittingOf(t, oneStitcher, whole.Joint().Begin(all), lakeTop, lakeSkirt)
	if _, ok := errors.AsType[*process.DoneError](err); !ok {
		t.Errorf("all is done, and the error is %v", err)
	}
}

// Three alike garments take three times the thread of one, wherever no trial row is
// sewn with it, and their steps three times the minutes.
func TestSittingOfSeveralAlike(t *testing.T) {
	top := strings.Replace(lakeTop, "cotton-lawn", "silk-georgette", 2)
	of := func(s *process.Sitting, tex string) (metres, minutes float64) {
		for _, x := range s.Thread {
			if x.Colour == "white" && strings.Contains(x.Kind, tex) {
				metres += x.Metres
			}
		}
		for _, o := range s.Operations {
			if o.Garment == 2 && o.Does == "stitch" {
				minutes += o.Minutes
			}
		}
		return metres, minutes
	}
	one, once := of(mustSit(t, oneStitcher, nil, top, lakeSkirt), "cotton")
	three, thrice := of(mustSit(t, oneStitcher, nil, top, lakeSkirt+"\nquantity: 3"), "cotton")
	if one == 0 || three < 3*one-0.4 || three > 3*one+0.4 { // rounded to tenths
		t.Errorf("one takes %.1f m, three %.1f", one, three)
	}
	if thrice < 2*once {
		t.Errorf("one takes %.1f minutes of stitching, three %.1f", once, thrice)
	}
}

// Where garments want one colour in two kinds of thread at one machine, the thread
// is told of each and the notices say that the order takes it for one; where they
// want one kind, or machines have each their own, nothing is said.
func TestSittingKindsOfThread(t *testing.T) {
	silk := strings.Replace(lakeTop, "{is: cotton-lawn, colour: white", "{is: silk-satin, colour: white", 1)
	silk = strings.Replace(silk, "{is: cotton-lawn, colour: grey", "{is: silk-georgette, colour: white", 1)
	for _, tt := range []struct {
		top, room string
		kinds     int
		told      bool
	}{
		{silk, oneStitcher, 2, true},
		{lakeTop, oneStitcher, 1, false},
	} {
		s := mustSit(t, tt.room, nil, tt.top, lakeSkirt)
		kinds := 0
		for _, x := range s.Thread {
			if x.Colour == "white" {
				kinds++
			}
		}
		told := slices.ContainsFunc(s.Notices, func(n process.Notice) bool {
			return n.About == "thread" && strings.HasPrefix(n.Text, "White is wanted in fine silk thread, ticket 180 and in fine cotton")
		})
		if kinds != tt.kinds || told != tt.told {
			t.Errorf("white in %d kinds, told %t; want %d, %t", kinds, told, tt.kinds, tt.told)
		}
	}
}

// Garments of one title are told apart by their numbers, and what is to be known of
// several is said once, of whom it holds.
func TestSittingNamesItsGarments(t *testing.T) {
	s := mustSit(t, oneStitcher, nil, lakeTop, lakeSkirt, lakeTop)
	var labels []string
	for _, g := range s.Garments {
		labels = append(labels, g.Label)
	}
	if d := cmp.Diff([]string{"Lake top no. 1", "Lake skirt", "Lake top no. 3"}, labels); d != "" {
		t.Error(d)
	}
	abouts := map[string]int{}
	for k, n := range s.Notices {
		abouts[n.About]++
		for _, m := range s.Notices[:k] {
			if m.Text == n.Text {
				t.Errorf("%q is said of %q and of %q", n.Text, m.About, n.About)
			}
		}
	}
	for _, want := range []string{"Cotton lawn", "Lake top no. 1 and Lake top no. 3, head", "Lake skirt, waist"} {
		if abouts[want] != 1 {
			t.Errorf("%d notices about %q: %v", abouts[want], want, abouts)
		}
	}
	for _, st := range s.Steps {
		for _, g := range s.Garments {
			if slices.Contains(st.Garments, g.Number) != strings.Contains(st.Title, g.Label+": ") {
				t.Errorf("step %d is of %v, and its title is %q", st.Number, st.Garments, st.Title)
			}
		}
	}
}

// What a job wishes and pins holds in the rest of a sitting begun too, and how the
// machines are to be left: by wishes that ask for opposite orders, so that none comes
// about by itself.
func TestSittingBegunKeepsWhatIsAsked(t *testing.T) {
	room := "machines: [{is: straight-stitcher, leave: navy}]\niron: steam"
	for _, tt := range []struct{ asks, first, then string }{
		{"wishes: {neck before armhole: 30}", "2/neck", "2/armhole"},
		{"wishes: {armhole before neck: 30}", "2/armhole", "2/neck"},
		{"pins: [side before shoulder]", "2/side", "2/shoulder"},
		{"pins: [shoulder before side]", "2/shoulder", "2/side"},
	} {
		jobs := []string{lakeSkirt, lakeTop + "\n" + tt.asks}
		whole := mustSit(t, room, nil, jobs...)
		rest := mustSit(t, room, whole.Joint().Begin([]string{"1/side.1", "2/neck-staystitch.1"}), jobs...)
		// Strips may be got ready at any time: what counts is the last of the one and the
		// first row of the other.
		done, begun := -1, len(rest.Operations)
		for at, o := range rest.Operations {
			if o.Seam == tt.first {
				done = at
			}
			if o.Seam == tt.then && o.Does == "stitch" {
				begun = min(begun, at)
			}
		}
		if done < 0 || begun == len(rest.Operations) || done > begun {
			t.Errorf("%s: the rest has %s done at %d and %s begun at %d", tt.asks, tt.first, done, tt.then, begun)
		}
		for _, w := range rest.Order.Wishes {
			if !w.Kept {
				t.Errorf("%s: %+v", tt.asks, w)
			}
		}
		thread := ""
		for _, o := range rest.Operations {
			if o.Station == "straight-stitcher" {
				thread = o.Setting.Thread
			}
		}
		if thread != "navy" {
			t.Errorf("the machine is left with %q", thread)
		}
	}
}

// Every garment of the shelf sits beside others, a lined one too: all its operations
// and checks are there, in an order that its reasons allow.
func TestEveryGarmentInASitting(t *testing.T) {
	shelf := loadShelf(t)
	w := roomOf("steam", "straight-stitcher", "overlocker-3")
	names := append(templates.Names(), "a-line-skirt")
	for from := 0; from < len(names); from += 4 {
		var ins []process.Input
		for k, name := range names[from:min(from+4, len(names))] {
			g, err := templates.Load(name)
			if err != nil {
				t.Fatal(err)
			}
			j := jobFor(g, "cotton-lawn", "cotton-lawn")
			if from+k == len(names)-1 {
				j.Choices = form.Pairs[form.Text]{pair("lining", "hung")}
			}
			ins = append(ins, process.Input{Job: j, Garment: g, Workroom: w, Shelf: shelf})
		}
		s, err := process.Sit(t.Context(), ins, nil, order.Options{Nodes: order.NoSearch})
		if err != nil {
			t.Fatal(err)
		}
		checkOrder(t, s.Joint())
		have, want := map[string]bool{}, 0
		for _, o := range s.Operations {
			have[o.ID] = true
		}
		for _, g := range s.Garments {
			want += len(g.Plan.Checks)
			for _, o := range g.Plan.Operations {
				if o.Does != "test" && !have[g.Name(o.ID)] {
					t.Errorf("%s lacks %s", g.Label, o.ID)
				}
			}
		}
		if len(s.Checks) != want {
			t.Errorf("%v: %d checks, want %d", names[from:min(from+4, len(names))], len(s.Checks), want)
		}
	}
}
