package process

import (
	"math"
	"slices"
	"strconv"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/seams/length"
)

// enter looks up the workroom's machines on the shelf and sets out its
// stations: the machines in the room's order, the iron, the table, the hands.
func enter(w *Workroom, shelf *seams.Shelf, favour string, style length.Style) (*room, error) {
	r := &room{begin: -1, house: map[string]float64{}, watched: map[string]watched{}, rests: w.Rests.allowances(), move: defaultMove, wind: defaultWind, favour: favour, style: style}
	if r.favour == "" {
		r.favour = w.Favour.Value
	}
	for _, p := range w.House {
		r.house[p.Key.Value] = float64(p.Value)
	}
	if v, ok := minutesOf(w.Minutes.Move); ok {
		r.move = v
	}
	r.pick, _ = minutesOf(w.Minutes.Pick)
	if v, ok := minutesOf(w.Minutes.Wind); ok {
		r.wind = v
	}
	taken := map[string]int{}
	faults := checkHouse(w, shelf)
	for _, rm := range w.Machines {
		m, err := shelf.Machine(rm.Is.Value)
		if err != nil {
			faults = append(faults, form.FaultAt(rm.Is.At, "no machine "+strconv.Quote(rm.Is.Value)+" on the shelf",
				form.Nearest(rm.Is.Value, machineNames(shelf)), "bodkin list machines shows what there is"))
			continue
		}
		if m.Kind == "iron" || m.Kind == "hand" {
			faults = append(faults, form.FaultAt(rm.Is.At, m.Title+" is not set up as a machine", "",
				"hands are always there, and the iron has its own key: iron: steam"))
			continue
		}
		if foot := rm.Foot.Value; foot != "" && !slices.Contains(m.Feet, foot) {
			faults = append(faults, form.FaultAt(rm.Foot.At, lowerFirst(m.Title)+" has no "+strconv.Quote(foot),
				form.Nearest(foot, m.Feet), "its feet are "+listWords(m.Feet, "and")))
			continue
		}
		title := rm.Name
		if title == "" {
			title = m.Title
		}
		name := m.Name
		if taken[name]++; taken[name] > 1 {
			name += "-" + strconv.Itoa(taken[name])
			if rm.Name == "" {
				title += " " + strconv.Itoa(taken[m.Name])
			}
		}
		st := station{
			Station: Station{Name: name, Title: title, Kind: "machine", Machine: m.Name},
			machine: *m, below: threadsBelow(*m, shelf), leave: rm.Leave, held: Setting{Foot: rm.Foot.Value}, minutes: changesOf(m.Minutes, w.Minutes),
		}
		st.held.carry(rm.Threaded, st.below)
		r.stations = append(r.stations, st)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if iron := w.Iron.Value; iron != "none" {
		m, err := shelf.Machine(ironStation)
		if err != nil {
			return nil, err
		}
		r.iron, r.steam, r.maxDots = true, iron != "dry", m.MaxDots
		r.stations = append(r.stations, station{
			Station: Station{Name: ironStation, Title: m.Title, Kind: "iron", Machine: m.Name},
			machine: *m, minutes: changesOf(m.Minutes, w.Minutes),
		})
	}
	if faults := r.watch(w.Timed, shelf); len(faults) > 0 {
		return nil, faults
	}
	hand, err := shelf.Machine(handStation)
	if err != nil {
		return nil, err
	}
	r.stations = append(r.stations,
		station{Station: Station{Name: tableStation, Title: "Table", Kind: "table"}},
		station{Station: Station{Name: handStation, Title: hand.Title, Kind: "hand", Machine: hand.Name},
			machine: *hand, minutes: hand.Minutes})
	return r, nil
}

// threadsBelow says which threads besides those of its needles a machine is set up
// with: bobbin, loopers.
func threadsBelow(m seams.Machine, shelf *seams.Shelf) []string {
	var out []string
	for _, s := range shelf.Stitches {
		if !slices.Contains(m.Forms, s.Name) {
			continue
		}
		if s.Bobbins > 0 && !slices.Contains(out, "bobbin") {
			out = append(out, "bobbin")
		}
		if s.Loopers > 0 && !slices.Contains(out, "loopers") {
			out = append(out, "loopers")
		}
	}
	return out
}

// carry threads the setting in one colour throughout, where there is one.
func (s *Setting) carry(colour string, below []string) {
	if colour == "" {
		return
	}
	s.Thread = colour
	if slices.Contains(below, "bobbin") {
		s.Bobbin = colour
	}
	if slices.Contains(below, "loopers") {
		s.Loopers = colour
	}
}

// changesOf puts the house's minutes over the machine's.
func changesOf(c seams.Changes, own RoomMinutes) seams.Changes {
	for _, o := range []struct {
		text form.Text
		to   *float64
	}{{own.Thread, &c.Thread}, {own.Bobbin, &c.Bobbin}, {own.Loopers, &c.Loopers}, {own.Needle, &c.Needle}, {own.Foot, &c.Foot}, {own.Stitch, &c.Stitch},
		{own.Hotter, &c.Hotter}, {own.Cooler, &c.Cooler}} {
		if v, ok := minutesOf(o.text); ok {
			*o.to = v
		}
	}
	return c
}

func minutesOf(t form.Text) (float64, bool) {
	v, err := strconv.ParseFloat(t.Value, 64)
	return v, err == nil
}

func machineNames(shelf *seams.Shelf) []string {
	var out []string
	for _, m := range shelf.Machines {
		if m.Kind == "machine" {
			out = append(out, m.Name)
		}
	}
	return out
}

// forms reports whether anything in the room forms the stitch; hands form every
// hand stitch.
func (r *room) forms(stitch string) bool {
	return slices.ContainsFunc(r.stations, func(s station) bool { return slices.Contains(s.machine.Forms, stitch) })
}

// facts are what rules may ask of the room.
func (r *room) facts() seams.WorkroomFacts {
	return seams.WorkroomFacts{
		Forms: r.forms,
		House: func(name string, otherwise float64) float64 {
			if v, ok := r.house[name]; ok {
				return v
			}
			if r.style == length.Inches {
				return tradeInches(otherwise)
			}
			return otherwise
		},
		Iron: r.iron, Dots: r.maxDots, Steam: r.steam, Favour: r.favour,
	}
}

// at is the index of a station by name, -1 where the room has none.
func (r *room) at(name string) int {
	return slices.IndexFunc(r.stations, func(s station) bool { return s.Name == name })
}

// forming is the station at which a stitch is formed: the first in the room's
// own order that forms it as its only or first stitch, else the first that
// forms it at all.
func (r *room) forming(stitch string) int {
	first := slices.IndexFunc(r.stations, func(s station) bool {
		return len(s.machine.Forms) > 0 && s.machine.Forms[0] == stitch
	})
	if first >= 0 {
		return first
	}
	return slices.IndexFunc(r.stations, func(s station) bool { return slices.Contains(s.machine.Forms, stitch) })
}

// takes is the station at which a stitch is formed through so many mm under a foot
// of this name, empty for any: the usual one if they go under its foot, else the
// first that forms it and takes them; the usual one where none does.
func (r *room) takes(stitch, foot string, thick float64) int {
	usual := r.forming(stitch)
	if usual < 0 || r.stations[usual].clears(thick) {
		return usual
	}
	other := slices.IndexFunc(r.stations, func(s station) bool {
		return s.Kind == "machine" && slices.Contains(s.machine.Forms, stitch) && s.clears(thick) && (foot == "" || slices.Contains(s.machine.Feet, foot))
	})
	if other < 0 {
		return usual
	}
	return other
}

// clears reports whether so many mm go under the foot of a station; what is no
// machine, or does not say, takes anything.
func (s station) clears(thick float64) bool {
	return s.machine.MaxThickness <= 0 || thick <= s.machine.MaxThickness
}

// tradeInches is the width in eighths of an inch that a maker who thinks in
// inches uses where another uses so many millimetres: 3 mm is 1/8 in, 6 mm 1/4,
// 10 mm 3/8, 13 mm 1/2, 15 mm 5/8, 20 mm 3/4, 25 mm 1 in, and quarters above.
// Common practice, no source. Below 2 mm there is no eighth, so the width stays.
func tradeInches(mm float64) float64 {
	if mm < 2 || mm > 150 {
		return mm
	}
	step := 25.4 / 8
	if mm > 26 {
		step = 25.4 / 4
	}
	return max(math.Round(mm/step), 1) * step
}
