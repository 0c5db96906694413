package process

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/seams/form"
)

// oneRoom puts the jobs of a sitting into the room of the first, which they find
// and leave as all of them say: machines as they stand, cones as they were
// counted. Where two say what cannot both be, that is a fault at the later.
func oneRoom(ins []Input) ([]Input, error) {
	first := ins[0]
	room, err := enter(first.Workroom, first.Shelf, "", styleOf(first.Job, first.Workroom))
	if err != nil {
		return nil, err
	}
	var faults form.Faults
	var machines form.Pairs[Standing]
	var cones form.Pairs[int]
	for _, in := range ins {
		if style := styleOf(first.Job, first.Workroom); styleOf(in.Job, first.Workroom) != style {
			at := in.Job.Units.At
			if at == (form.Place{}) {
				at = in.Job.Make.At
			}
			faults = append(faults, form.FaultAt(at, "this job's lengths would be in another unit than those of the first, which are in "+style.String(), "",
				"a sheet has one unit: write the same units in every job, or choose one for all with --units"))
		}
		for _, p := range in.Job.Machines {
			faults = append(faults, room.agrees(machines, p)...)
		}
		machines = append(machines, in.Job.Machines...)
		for _, p := range in.Job.Cones {
			for _, q := range cones {
				if strings.EqualFold(p.Key.Value, q.Key.Value) && p.Value != q.Value {
					faults = append(faults, form.FaultAt(p.Key.At, fmt.Sprintf("here %s of %s, and at %s", countWords(p.Value, "cone", "cones"), p.Key.Value, placed(q.Key.At, q.Value)), "",
						"the sitting has one shelf of cones: write the same number in both"))
				}
			}
		}
		cones = append(cones, in.Job.Cones...)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	out := slices.Clone(ins)
	for k := range out {
		job := *out[k].Job
		job.Machines, job.Cones = machines, cones
		out[k].Job, out[k].Workroom = &job, first.Workroom
	}
	return out, nil
}

func placed(at form.Place, n int) string {
	return fmt.Sprintf("%s:%d %s", at.File, at.Line, strconv.Itoa(n))
}

// agrees looks for what a job says of a machine that another has said otherwise. A
// machine that the room does not have is told elsewhere.
func (r *room) agrees(said form.Pairs[Standing], p form.Pair[Standing]) form.Faults {
	var faults form.Faults
	k := r.called(p.Key.Value)
	for _, q := range said {
		if k < 0 || r.called(q.Key.Value) != k {
			continue
		}
		for _, x := range []struct{ words, here, there string }{
			{"is threaded with", p.Value.Threaded, q.Value.Threaded},
			{"has on it the", p.Value.Foot.Value, q.Value.Foot.Value},
			{"is to be left threaded with", p.Value.Leave, q.Value.Leave},
		} {
			if x.here == "" || x.there == "" || x.here == x.there {
				continue
			}
			faults = append(faults, form.FaultAt(p.Key.At, fmt.Sprintf("here the %s %s %s, and by %s:%d it is %s",
				lowerFirst(r.stations[k].Title), x.words, x.here, q.Key.At.File, q.Key.At.Line, x.there), "",
				"in one sitting it can be but one: write the same in both jobs, or in one of them only"))
		}
	}
	return faults
}

// readyAll prepares the garments of a sitting, each with what its job pins and
// wishes, and returns the orders that the jobs ask for, nil where one asks for
// none. Faults of all jobs are told together.
func readyAll(ins []Input) ([]*operator, []*OwnOrder, error) {
	var ready []*operator
	var owns []*OwnOrder
	var faults form.Faults
	for k, in := range ins {
		o, own, err := readied(in)
		ready, owns = append(ready, o), append(owns, own)
		found, wrong := errors.AsType[form.Faults](err)
		if !wrong && err != nil {
			return nil, nil, &GarmentError{k, err}
		}
		for _, f := range found {
			if f.Place == (form.Place{}) {
				f.Place = in.Job.Make.At
			}
			if !slices.Contains(faults, f) { // of the room, which all share
				faults = append(faults, f)
			}
		}
	}
	if len(faults) > 0 {
		return nil, nil, faults
	}
	return ready, owns, nil
}

func readied(in Input) (*operator, *OwnOrder, error) {
	o, _, relations, err := prepare(in)
	if err != nil {
		return nil, nil, err
	}
	o.precede(relations)
	own, err := o.pin(in.Job)
	if err != nil {
		return nil, nil, err
	}
	return o, own, o.wishing(in.Job)
}

// owned are the orders that the jobs of a sitting ask for as one; nil where none
// does.
func (o *operator) owned(owns []*OwnOrder) *OwnOrder {
	out := &OwnOrder{Order: []string{}, Pins: []string{}, Refused: []Refused{}}
	asked := false
	for k, own := range owns {
		if own == nil {
			continue
		}
		asked = true
		of := func(list []string) (out []string) {
			for _, name := range list {
				out = append(out, o.labelled(name, k+1))
			}
			return out
		}
		out.Order, out.Pins = append(out.Order, of(own.Order)...), append(out.Pins, of(own.Pins)...)
		for _, r := range own.Refused {
			r.First, r.Then = o.labelled(r.First, k+1), o.labelled(r.Then, k+1)
			r.Because = slices.Clone(r.Because)
			for i := range r.Because {
				r.Because[i].First, r.Because[i].Then = numbered(k+1, r.Because[i].First), numbered(k+1, r.Because[i].Then)
			}
			out.Refused = append(out.Refused, r)
		}
	}
	if !asked {
		return nil
	}
	return out
}

// numbered is a name of a garment's plan as a sitting has it.
func numbered(garment int, name string) string { return strconv.Itoa(garment) + "/" + name }
