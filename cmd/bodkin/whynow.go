package main

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bodkin/process"
)

// whyStep tells why a step stands where it does: what must be altered before it,
// what it waits for, how early it could stand, and what waits for it.
func whyStep(plan *process.Plan, number string) (string, error) {
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > len(plan.Steps) {
		return "", wrong(fmt.Sprintf("its steps run from 1 to %d", len(plan.Steps)), "the plan has no step %q", number)
	}
	step := plan.Steps[n-1]
	var b strings.Builder
	b.WriteString(wrapped(fmt.Sprintf("step %d, %s: %s", n, stationTitle(plan, step.Station), step.Title), "", "  "))
	for _, c := range plan.Changes {
		if c.BeforeStep == n && c.What != "move" && c.From != "" {
			b.WriteString(wrapped(fmt.Sprintf("changed before it: %s from %s to %s, %.1f min", c.What, c.From, c.To, c.Minutes), "  ", "    "))
		}
	}
	earliest := 1
	for _, o := range operations(plan, step.Operations) {
		for _, a := range o.After {
			if slices.Contains(step.Operations, a.ID) {
				continue
			}
			earliest = max(earliest, stepOf(plan, a.ID)+1)
			b.WriteString(wrapped(fmt.Sprintf("%s waits for %s, because %s", o.ID, nameOf(plan, a.ID), a.Because), "  ", "    "))
		}
	}
	switch {
	case earliest == n && n > 1:
		b.WriteString(wrapped(fmt.Sprintf("so it can come no earlier than right after step %d", n-1), "", "  "))
	case n > 1:
		b.WriteString(wrapped(fmt.Sprintf("what it waits for is done by step %d; it stands here because that takes the fewest minutes of change", earliest-1), "", "  "))
	}
	var later []string
	for _, o := range plan.Operations {
		for _, a := range o.After {
			if !slices.Contains(step.Operations, o.ID) && slices.Contains(step.Operations, a.ID) {
				later = append(later, fmt.Sprintf("%s, because %s", nameOf(plan, o.ID), a.Because))
			}
		}
	}
	if len(later) > 0 {
		b.WriteString("what waits for it:\n")
	}
	for _, l := range later {
		b.WriteString(wrapped(l, "  ", "    "))
	}
	return b.String(), nil
}

func stationTitle(plan *process.Plan, name string) string {
	for _, s := range plan.Stations {
		if s.Name == name {
			return s.Title
		}
	}
	return name
}

// couldNow answers whether something could be done now: what is missing, and
// what doing it as soon as may be costs against the best order of what is left.
func (g *gathered) couldNow(ctx context.Context, s streams, set settings, plan *process.Plan, ask question) (string, error) {
	n, err := resolve(plan, ask.now)
	if err != nil {
		return "", err
	}
	rest, done := plan, []string{}
	if ask.done != "" {
		if g.Begun, err = begin(plan, ask.done); err != nil {
			return "", err
		}
		done = g.Begun.Done
	}
	var wanted []string
	later := false
	for _, o := range operations(plan, n.ids) {
		switch {
		case slices.Contains(done, o.ID):
		case o.Closing && len(n.ids) > 1:
			later = true
		default:
			wanted = append(wanted, o.ID)
		}
	}
	if len(wanted) == 0 {
		return wrapped(ask.now+" is done already", "", "  "), nil
	}
	if g.Begun != nil {
		if rest, err = g.work(ctx, s, set); err != nil {
			return "", err
		}
	}
	g.First = wanted
	now, err := g.work(ctx, s, set)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	missing := rest.Missing(wanted, nil)
	if len(missing) == 0 {
		b.WriteString(wrapped("yes: everything that "+ask.now+" waits for is done", "", "  "))
	} else {
		writeMissing(&b, plan, ask.now, wanted, missing)
	}
	if later {
		b.WriteString(wrapped("its finishing comes later: it waits for the seam that closes it", "", "  "))
	}
	b.WriteString(wrapped(priceOfNow(rest, now, len(missing) > 0), "", "  "))
	return b.String(), nil
}

// writeMissing lists what must come first: what the wanted work waits for
// itself, with the reasons, and how much work that is in all.
func writeMissing(b *strings.Builder, plan *process.Plan, name string, wanted []string, missing []process.Operation) {
	b.WriteString("not yet: " + name + " waits for\n")
	minutes := 0.0
	var ids []string
	for _, o := range missing {
		minutes += o.Minutes
		ids = append(ids, o.ID)
	}
	for _, o := range operations(plan, wanted) {
		for _, a := range o.After {
			if slices.Contains(ids, a.ID) {
				b.WriteString(wrapped(fmt.Sprintf("%s, because %s", nameOf(plan, a.ID), a.Because), "  ", "    "))
			}
		}
	}
	b.WriteString(wrapped(fmt.Sprintf("with what those wait for, %s first, about %.0f min of work, in %s of the plan",
		counted(len(missing), "operation comes", "operations come"), max(minutes, 1), stepsHolding(plan, ids)), "", "  "))
}

// priceOfNow compares the changes of doing it now with those of the best order.
func priceOfNow(rest, now *process.Plan, missing bool) string {
	what := "doing it now"
	if missing {
		what = "doing all that and then it before anything else"
	}
	more := now.Order.ChangeMinutes - rest.Order.ChangeMinutes
	if more < 0.05 {
		return what + " costs no more changes than the best order of what is left"
	}
	return fmt.Sprintf("%s costs %.1f minutes more of change than the best order of what is left (%.1f instead of %.1f)",
		what, more, now.Order.ChangeMinutes, rest.Order.ChangeMinutes)
}
