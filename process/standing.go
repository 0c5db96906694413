package process

import (
	"slices"
	"strconv"
	"strings"

	"bodkin/seams/form"
)

// stand puts how the job finds the machines, and wants them left, over what the
// workroom says of them. A machine is named as the room calls it, or as the
// shelf does.
func (r *room) stand(now form.Pairs[Standing]) error {
	var faults form.Faults
	var names []string
	for _, st := range r.stations {
		if st.Kind == "machine" {
			names = append(names, st.Name)
			if st.Title != st.machine.Title {
				names = append(names, st.Title)
			}
		}
	}
	for _, p := range now {
		k := r.called(p.Key.Value)
		if k < 0 {
			faults = append(faults, form.FaultAt(p.Key.At, "no machine "+strconv.Quote(p.Key.Value)+" in the workroom",
				form.Nearest(p.Key.Value, names), "it has "+orNothing(listWords(names, "and"))))
			continue
		}
		st := &r.stations[k]
		if foot := p.Value.Foot; foot.Value != "" {
			if !slices.Contains(st.machine.Feet, foot.Value) {
				faults = append(faults, form.FaultAt(foot.At, lowerFirst(st.Title)+" has no "+strconv.Quote(foot.Value),
					form.Nearest(foot.Value, st.machine.Feet), "its feet are "+listWords(st.machine.Feet, "and")))
				continue
			}
			st.held.Foot = foot.Value
		}
		st.held.carry(p.Value.Threaded, st.below)
		if p.Value.Leave != "" {
			st.leave = p.Value.Leave
		}
	}
	return faults.Err()
}

// called is the machine of a name, as the shelf or the room calls it; -1 where the
// room has none.
func (r *room) called(name string) int {
	return slices.IndexFunc(r.stations, func(st station) bool {
		return st.Kind == "machine" && (st.Name == name || strings.EqualFold(st.Title, name))
	})
}

func orNothing(words string) string {
	if words == "" {
		return "no machine"
	}
	return words
}
