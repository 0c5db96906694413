package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/process"
)

// begin reads what is done of a plan: steps by number or range, seams and
// operations by name, with commas between, such as 1-7 or 1-3, side.2.
func begin(plan *process.Plan, done string) (*process.Begun, error) {
	var ids []string
	for part := range strings.SplitSeq(done, ",") {
		part = strings.TrimSpace(part)
		found, err := doneIn(plan, part)
		if err != nil {
			return nil, err
		}
		ids = append(ids, found...)
	}
	return plan.Begin(ids), nil
}

// doneIn are the operations of one part of the list.
func doneIn(plan *process.Plan, part string) ([]string, error) {
	from, to, ranged := strings.Cut(part, "-")
	a, errA := strconv.Atoi(strings.TrimSpace(from))
	b, errB := strconv.Atoi(strings.TrimSpace(to))
	switch {
	case part == "":
		return nil, wrong("write steps such as 1-7, or names of seams and operations with commas between", "a part of --done is empty")
	case !ranged || errA != nil || errB != nil:
		n, err := resolve(plan, part)
		return n.ids, err
	case a < 1 || b > len(plan.Steps) || a > b:
		return nil, wrong(fmt.Sprintf("the steps run from 1 to %d", len(plan.Steps)), "--done names steps %s", part)
	}
	var ids []string
	for _, s := range plan.Steps[a-1 : b] {
		ids = append(ids, s.Operations...)
	}
	return ids, nil
}

// planned is the plan; of a work begun, the rest of it, worked out from the
// present state of the room.
func (g *gathered) planned(ctx context.Context, s streams, set settings, done string) (*process.Plan, error) {
	whole, err := g.work(ctx, s, set)
	if err != nil || done == "" {
		return whole, err
	}
	if g.Begun, err = begin(whole, done); err != nil {
		return nil, err
	}
	plan, err := g.work(ctx, s, set)
	return plan, nothingLeft(err, done)
}

// nothingLeft says of work that was begun, where nothing of it is left, what is
// wrong with that.
func nothingLeft(err error, done string) error {
	if _, all := errors.AsType[*process.DoneError](err); all {
		return wrong("name fewer steps", "with %s done, nothing is left to do", done)
	}
	return err
}

// stepsHolding names the steps of a plan that hold the operations, those in a
// row as a range: step 3, or steps 3 to 5 and 7.
func stepsHolding(plan *process.Plan, ids []string) string {
	var runs [][2]int
	for _, st := range plan.Steps {
		if !slices.ContainsFunc(st.Operations, func(id string) bool { return slices.Contains(ids, id) }) {
			continue
		}
		if k := len(runs) - 1; k >= 0 && runs[k][1] == st.Number-1 {
			runs[k][1] = st.Number
		} else {
			runs = append(runs, [2]int{st.Number, st.Number})
		}
	}
	var out []string
	for _, r := range runs {
		if r[0] == r[1] {
			out = append(out, strconv.Itoa(r[0]))
		} else {
			out = append(out, fmt.Sprintf("%d to %d", r[0], r[1]))
		}
	}
	word := "step "
	if len(runs) > 1 || len(runs) == 1 && runs[0][0] != runs[0][1] {
		word = "steps "
	}
	if n := len(out); n > 1 {
		out = append(out[:n-2:n-2], out[n-2]+" and "+out[n-1])
	}
	return word + strings.Join(out, ", ")
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
