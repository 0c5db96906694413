package process

import (
	"fmt"
	"math"

	"bodkin/seams"
)

// BobbinUse is what a colour takes at one machine in full bobbins, all wound
// before the work begins, so that no seam waits for the winder.
type BobbinUse struct {
	Colour  string    `json:"colour"`
	Station string    `json:"station"`
	Metres  float64   `json:"metres"` // below, all garments, waste included
	Holds   float64   `json:"holds_m"`
	Wind    int       `json:"wind"`
	Minutes float64   `json:"minutes"`  // to wind them
	RunsOut []RunsOut `json:"runs_out"` // where the next full one goes in
}

// RunsOut is where a bobbin comes to its end.
type RunsOut struct {
	Step      int    `json:"step"`
	Operation string `json:"operation"`
}

// bobbins follows the thread below through the planned order.
func (o *operator) bobbins(plan *Plan, a *arrangement) ([]BobbinUse, error) {
	out := []BobbinUse{}
	at := map[[2]string]int{}
	stepOf := map[string]int{}
	for _, s := range plan.Steps {
		for _, id := range s.Operations {
			stepOf[id] = s.Number
		}
	}
	for _, i := range a.sequence {
		n := o.ops[i]
		holds := o.room.stations[n.station].machine.Bobbin
		if n.Setting.Stitch == "" || holds <= 0 {
			continue
		}
		st, err := o.shelf.Stitch(n.Setting.Stitch)
		if err != nil {
			return nil, err
		}
		if n.Setting.Bobbin == "" {
			continue
		}
		_, below, err := o.draws(n, st)
		if err != nil {
			return nil, err
		}
		key := [2]string{n.Station, n.Setting.Bobbin}
		k, ok := at[key]
		if !ok {
			k = len(out)
			at[key], out = k, append(out, BobbinUse{Colour: n.Setting.Bobbin, Station: n.Station, Holds: holds, Wind: 1, RunsOut: []RunsOut{}})
		}
		u := &out[k]
		u.Metres += seams.WithWaste(below)
		for u.Metres > float64(u.Wind)*holds {
			u.Wind++
			u.RunsOut = append(u.RunsOut, RunsOut{Step: stepOf[n.ID], Operation: n.ID})
		}
	}
	for k := range out {
		out[k].Metres = math.Round(out[k].Metres*100) / 100
		out[k].Minutes = float64(out[k].Wind) * o.room.wind
		plan.Totals.WindMinutes += out[k].Minutes
	}
	return out, nil
}

// bobbinNotices tell where a bobbin comes to its end.
func (o *operator) bobbinNotices(plan *Plan) []Notice {
	var out []Notice
	for _, u := range plan.Bobbins {
		if len(u.RunsOut) == 0 {
			continue
		}
		var steps []string
		for k, r := range u.RunsOut {
			if k < 3 {
				steps = append(steps, fmt.Sprintf("step %d (%s)", r.Step, r.Operation))
			}
		}
		text := fmt.Sprintf("Wind %d of %s before you begin. By the estimate of %.0f m a bobbin, one comes to its end in %s", u.Wind, u.Colour, u.Holds, listWords(steps, "and in"))
		if more := len(u.RunsOut) - len(steps); more > 0 {
			text += fmt.Sprintf(", and %d more later", more)
		}
		out = append(out, Notice{About: "bobbins", Text: text + ": put the next full one in before a row, not within it."})
	}
	return out
}
