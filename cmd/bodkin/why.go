package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
)

func whyCommand(s streams) *cobra.Command {
	var ask question
	cmd := &cobra.Command{
		Use:   "why JOB [SEAM [EARLIER]]",
		Short: "Tell why a seam is sewn as it is, or why one thing comes first",
		Long: `With one name, why tells which construction the seam or edge has, what speaks
for it, why the others lost and what would change the choice. With two, it tells
the chain of reasons for which the first comes after the second. A name is a
seam, an edge or a detail by its name or title, an operation such as side.3, or
the number of a step. The demo is planned where JOB is demo.

With --step it tells why a step stands where it does; with --before, why
something is done before something else; with --now, whether something could be
done now, with what is done named by --done: what is missing, or what it costs.`,
		Example: `  bodkin why coat.yaml side
  bodkin why coat.yaml neck shoulder    why the neck comes after the shoulders
  bodkin why coat.yaml --before hem "side seam"
  bodkin why demo --step 7              what step 7 waits for and makes possible
  bodkin why demo --now hem --done 1-7  could I do the hem now?`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "JOB", "SEAM", "EARLIER"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := ask.check(cmd, args); err != nil {
				return err
			}
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			g, err := gather(cmd.Context(), s, set, demoOr(args[0]))
			if err != nil {
				return err
			}
			plan, err := g.work(cmd.Context(), s, set)
			if err != nil {
				return err
			}
			var text string
			switch {
			case ask.now != "":
				text, err = g.couldNow(cmd.Context(), s, set, plan, ask)
			case ask.step != "":
				text, err = whyStep(plan, ask.step)
			case ask.before != "":
				text, err = whyAfter(plan, ask.before, args[1])
			case len(args) == 2:
				text, err = g.whyOne(plan, args[1])
			default:
				text, err = whyAfter(plan, args[1], args[2])
			}
			if err == nil {
				fmt.Fprint(s.out, text)
			}
			return err
		},
		ValidArgsFunction: completeSeam(s),
	}
	f := cmd.Flags()
	f.StringVar(&ask.step, "step", "", "why the step with this `NUMBER` stands where it does")
	f.StringVar(&ask.before, "before", "", "why SEAM is done before this `LATER` one")
	f.StringVar(&ask.now, "now", "", "whether `THIS` could be done now")
	f.StringVar(&ask.done, "done", "", "`STEPS`, seams or operations that are done, such as 1-7 or 1-3,neck")
	addSettings(f, "workroom", "shelf", "units", "within")
	completeSettings(cmd)
	for _, n := range []string{"step", "before", "now", "done"} {
		complete(cmd, n, words(nil))
	}
	return cmd
}

// question is what why is asked with flags.
type question struct{ step, before, now, done string }

// check sees to it that one question is asked, and asked in full.
func (q question) check(cmd *cobra.Command, args []string) error {
	usage := "bodkin why --help shows what may be asked"
	asked := 0
	for _, flag := range []string{q.step, q.before, q.now} {
		if flag != "" {
			asked++
		}
	}
	names := len(args) - 1
	switch {
	case asked > 1:
		return wrong(usage, "--step, --before and --now ask different things")
	case q.done != "" && q.now == "":
		return wrong("write --now and what you would do", "--done says what is done where --now asks what could be")
	case q.before != "" && names != 1:
		return wrong(`write it as: bodkin why JOB --before hem "side seam"`, "--before needs the name of what comes first")
	case (q.step != "" || q.now != "") && names > 0:
		return wrong(usage, "why cannot take %q as well", args[1])
	case asked == 0 && names == 0:
		return wrong("usage: "+cmd.UseLine(), "why needs a SEAM")
	}
	return nil
}

// demoOr is the job's file, or none where the demo is meant.
func demoOr(job string) string {
	if job == "demo" {
		return ""
	}
	return job
}

// whyOne explains a seam, or what an operation or step waits for.
func whyOne(plan *process.Plan, name string) (string, error) {
	n, err := resolve(plan, name)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	if n.seam != nil {
		writeSeam(&b, plan, n.seam)
		return b.String(), nil
	}
	if n.step != nil {
		b.WriteString(wrapped(fmt.Sprintf("step %d: %s", n.step.Number, n.step.Title), "", "  "))
	}
	for _, o := range plan.Operations {
		if !slices.Contains(n.ids, o.ID) {
			continue
		}
		b.WriteString(wrapped(o.ID+": "+o.Text, "", "  "))
		for _, a := range o.After {
			if !slices.Contains(n.ids, a.ID) {
				b.WriteString(wrapped(fmt.Sprintf("after %s, because %s", nameOf(plan, a.ID), a.Because), "  ", "    "))
			}
		}
	}
	return b.String(), nil
}

// whyAfter explains why the work on one name comes after that on another.
func whyAfter(plan *process.Plan, then, earlier string) (string, error) {
	a, err := resolve(plan, then)
	if err != nil {
		return "", err
	}
	b, err := resolve(plan, earlier)
	if err != nil {
		return "", err
	}
	if slices.Equal(a.ids, b.ids) {
		return "", wrong("name two different ones", "%s and %s are the same work", then, earlier)
	}
	if text := chain(plan, a.ids, b.ids); text != "" {
		return text, nil
	}
	if text := chain(plan, b.ids, a.ids); text != "" {
		return fmt.Sprintf("%s does not wait for %s; it is the other way round:\n", then, earlier) + text, nil
	}
	return wrapped(fmt.Sprintf("nothing makes %s wait for %s; the order between them is a matter of fewest changes", then, earlier), "", "  "), nil
}

// chain is the chain of reasons in words, empty where there is none.
func chain(plan *process.Plan, then, earlier []string) string {
	var b strings.Builder
	for _, l := range plan.WhyAfter(then, earlier) {
		b.WriteString(wrapped(fmt.Sprintf("%s comes after %s, because %s", nameOf(plan, l.Then), nameOf(plan, l.First), l.Because), "", "  "))
	}
	if b.Len() > 0 {
		return b.String()
	}
	// Within one construction pass follows pass, which is left out of a chain.
	for _, t := range operations(plan, then) {
		for _, f := range operations(plan, earlier) {
			if t.Seam != "" && t.Seam == f.Seam && t.Pass > f.Pass {
				return wrapped(fmt.Sprintf("%s comes after %s, because it is a later pass of the same construction",
					nameOf(plan, t.ID), nameOf(plan, f.ID)), "", "  ")
			}
		}
	}
	return ""
}

func operations(plan *process.Plan, ids []string) []process.Operation {
	var out []process.Operation
	for _, o := range plan.Operations {
		if slices.Contains(ids, o.ID) {
			out = append(out, o)
		}
	}
	return out
}

func writeSeam(b *strings.Builder, plan *process.Plan, x *process.Seam) {
	b.WriteString(wrapped(x.Title+": "+x.ConstructionTitle, "", "  "))
	reasons := func(head, mark string, list []string) {
		if len(list) > 0 {
			b.WriteString(head)
		}
		for _, r := range list {
			b.WriteString(wrapped(r, "  "+mark+" ", "    "))
		}
	}
	reasons("for it:\n", "+", x.Because)
	reasons("against it, and outweighed:\n", "-", x.Against)
	if x.WorkBecause != "" {
		b.WriteString(wrapped(strings.TrimSpace("worked "+x.Work)+": "+x.WorkBecause, "", "  "))
	}
	var lost, out []string
	for _, r := range x.Rejected {
		text := r.Title + ": " + strings.Join(r.Because, "; ")
		if r.RuledOut {
			out = append(out, text)
		} else {
			lost = append(lost, text)
		}
	}
	reasons("it could also be:\n", "·", lost)
	reasons("ruled out:\n", "·", out)
	b.WriteString(wrapped("source: "+x.Source, "", "  "))
	if steps := stepsOf(plan, x.Name); steps != "" {
		b.WriteString(wrapped("steps: "+steps, "", "  "))
	}
}
