package process

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"bodkin/process/study"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
)

// TimedAct is an act that somebody was watched at with a clock, on cloth that
// stays put. The plan's minutes of the act follow it.
type TimedAct struct {
	Act    form.Text   `yaml:"act,required"`
	Over   length.MM   `yaml:"over,required"` // along the edge
	Seen   []form.Text `yaml:"seen,required"` // such as 70 s or 1.2 min
	Rating form.Text   `yaml:"rating"`        // how briskly she worked; 100, the usual, where absent
}

// Rests are what is added to the minutes where people's time is planned: in
// shared work, in a class and in a row of tables. In a hundred.
type Rests struct {
	Hands form.Text `yaml:"hands"` // for rests: on the work of the hands
	All   form.Text `yaml:"all"`   // for what comes between: on everything
}

func (r Rests) allowances() study.Allowances {
	hands, _ := numberOr(r.Hands, 0)
	all, _ := numberOr(r.All, 0)
	return study.Allowances{Hands: hands / 100, All: all / 100}
}

// spans are seconds or minutes.
var spans = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) ?(s|min)$`)

// span reads "70 s" or "1.2 min" in minutes.
func span(text string) (float64, bool) {
	w := spans.FindStringSubmatch(strings.TrimSpace(text))
	if w == nil {
		return 0, false
	}
	v, err := strconv.ParseFloat(w[1], 64)
	if w[2] == "s" {
		v /= 60
	}
	return v, err == nil && v > 0 && v <= 24*60
}

// checkTiming looks for what is wrong with times by themselves.
func checkTiming(timed []TimedAct, rests Rests) form.Faults {
	var faults form.Faults
	seen := map[string]bool{}
	for _, t := range timed {
		if seen[t.Act.Value] {
			faults = append(faults, form.FaultAt(t.Act.At, strconv.Quote(t.Act.Value)+" is timed twice", "", "put all that was seen into one list"))
		}
		seen[t.Act.Value] = true
		if len(t.Seen) == 0 {
			faults = append(faults, form.FaultAt(t.Act.At, strconv.Quote(t.Act.Value)+" was not seen once", "", "write what the clock showed, such as seen: [70 s, 58 s]"))
		}
		for _, s := range t.Seen {
			if _, ok := span(s.Value); !ok {
				faults = append(faults, form.FaultAt(s.At, "cannot read "+strconv.Quote(s.Value)+" as what a clock showed", "", "write seconds or minutes, such as 70 s or 1.2 min"))
			}
		}
		if t.Over <= 0 || t.Over > 100_000 {
			faults = append(faults, form.FaultAt(t.Act.At, strconv.Quote(t.Act.Value)+" is timed over no length that can be sewn", "", "write the length along the edge, such as over: 60 cm"))
		}
		if r, ok := numberOr(t.Rating, study.Standard); !ok || r < 20 || r > 200 {
			faults = append(faults, form.FaultAt(t.Rating.At, "cannot read "+strconv.Quote(t.Rating.Value)+" as a rating", "", "write 100 for the usual pace, 80 for slower, 120 for brisker, from 20 to 200"))
		}
	}
	for _, r := range []form.Text{rests.Hands, rests.All} {
		if v, ok := numberOr(r, 0); !ok || v < 0 || v > 100 {
			faults = append(faults, form.FaultAt(r.At, "cannot read "+strconv.Quote(r.Value)+" as rests", "", "write parts in a hundred from 0 to 100, such as hands: 11 and all: 5"))
		}
	}
	return faults
}

// numberOr reads a number, or takes another where there is none.
func numberOr(t form.Text, absent float64) (float64, bool) {
	if t.Value == "" {
		return absent, true
	}
	v, err := strconv.ParseFloat(t.Value, 64)
	return v, err == nil && !math.IsNaN(v)
}

// timedStitch is the stitch length at which a machine act is taken to have been
// timed, in mm: the usual one (common practice, no source).
const timedStitch = 2.5

// watch compares what was seen with the shelf's minutes: by act, what those are
// multiplied by, and what that rests on.
func (r *room) watch(timed []TimedAct, shelf *seams.Shelf) form.Faults {
	var faults form.Faults
	for _, t := range timed {
		act, err := shelf.Act(t.Act.Value)
		if err != nil {
			var names []string
			for _, a := range shelf.Acts {
				names = append(names, a.Name)
			}
			faults = append(faults, form.FaultAt(t.Act.At, "no act "+strconv.Quote(t.Act.Value), form.Nearest(t.Act.Value, names), "the acts are "+listWords(names, "and")))
			continue
		}
		shelfs := act.Start + act.PerMetre*float64(t.Over)/1000
		if act.Station == "machine" {
			for _, st := range r.stations {
				if st.Kind == "machine" {
					shelfs += seams.SewingMinutes(float64(t.Over), timedStitch, st.machine.Speed)
					break
				}
			}
		}
		rating, _ := numberOr(t.Rating, study.Standard)
		e := study.Element{Rating: rating, PerCycle: 1}
		for _, s := range t.Seen {
			v, _ := span(s.Value)
			e.Seen = append(e.Seen, v)
		}
		w := watched{times: e.Basic() / shelfs}
		if w.times < 0.1 || w.times > 10 {
			faults = append(faults, form.FaultAt(t.Act.At, fmt.Sprintf("%s over %s would take %.2g times what the shelf has", t.Act.Value, length.Format(t.Over, r.style), w.times), "",
				"look at the length and the units: the shelf has "+strconv.FormatFloat(math.Round(10*shelfs)/10, 'f', -1, 64)+" min"))
			continue
		}
		w.basis = fmt.Sprintf("timed in this workroom over %s: %s, %s; × %.2f what the shelf has", length.Format(t.Over, r.style), minutesText(e.Basic()), rated(len(e.Seen), rating), w.times)
		r.watched[t.Act.Value] = w
	}
	return faults
}

// watched is an act that was timed.
type watched struct {
	times float64
	basis string
}

func minutesText(m float64) string {
	return strconv.FormatFloat(math.Round(100*m)/100, 'f', -1, 64) + " min"
}

func rated(times int, rating float64) string {
	words := "seen once"
	if times > 1 {
		words = fmt.Sprintf("the mean of %d", times)
	}
	if rating != study.Standard {
		words += fmt.Sprintf(" at a rating of %g", rating)
	}
	return words
}

// standard is the minutes of an operation where people's time is planned.
func (o *operator) standard(n *op) float64 {
	return o.room.rests.Standard(study.Work{Hands: n.Minutes - n.stitching, Machine: n.stitching})
}

// restNotice tells what is added to minutes for rests.
func (o *operator) restNotice() Notice {
	a := o.room.rests
	if a == (study.Allowances{}) {
		return Notice{About: "rests", Text: "The minutes have no rests in them. A workroom can add them: rests: {hands: 11, all: 5} puts 11 in a hundred on the work of the hands and 5 on everything."}
	}
	return Notice{About: "rests", Text: fmt.Sprintf("The minutes have %g in a hundred of the hands' work added for rests, and then %g in a hundred of everything for what comes between: the workroom's own figures.", 100*a.Hands, 100*a.All)}
}
