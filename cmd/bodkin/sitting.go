package main

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams/length"
)

func sittingCommand(s streams) *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "sitting JOB JOB...",
		Short: "Plan several garments in one sitting, in one order",
		Long: `Sitting plans several jobs together: one order over all of them, so that what is
sewn in one colour is sewn in one go whatever garment it is of. It tells the
steps, each with its garment, what is cut for each, the thread, and what the
changes would take if one garment were finished before the next. How each seam
is sewn is told by bodkin plan of each job.`,
		Example: `  bodkin sitting skirt.yaml top.yaml
  bodkin sitting skirt.yaml top.yaml --json`,
		DisableFlagsInUseLine: true,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) < 2 {
				return wrong("usage: "+cmd.UseLine(), "sitting needs two jobs or more")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			all, err := sit(cmd.Context(), s, set, args)
			if err != nil {
				return err
			}
			if !asJSON {
				fmt.Fprint(s.out, sittingSheet(all))
				return nil
			}
			var out bytes.Buffer
			if err := writeJSON(&out, all); err != nil {
				return err
			}
			_, _ = s.out.Write(out.Bytes()) // run tells of a failure
			return nil
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write the sitting, with the plan of each garment, as JSON")
	addSettings(cmd.Flags(), "workroom", "shelf", "units", "within")
	completeSettings(cmd)
	return cmd
}

// sit reads the jobs and plans them together. Faults are shown with the lines of
// all their files.
func sit(ctx context.Context, s streams, set settings, jobs []string) (*process.Sitting, error) {
	var every gathered
	var ins []process.Input
	for _, job := range jobs {
		g, err := gather(ctx, s, set, demoOr(job))
		if err != nil {
			return nil, err
		}
		every.Input = g.Input
		every.files = append(every.files, g.files...)
		ins = append(ins, g.Input)
	}
	told := progress{to: s.err, now: time.Now, begun: time.Now()}
	opts := order.Options{Progress: told.tell}
	search, cancel := context.WithTimeout(ctx, set.within)
	defer cancel()
	if set.within == 0 {
		opts.Nodes, search = order.NoSearch, ctx
	}
	all, err := process.Sit(search, ins, opts)
	return all, every.placed(err)
}

// sittingSheet is a sitting as Markdown that reads well in a terminal too.
func sittingSheet(s *process.Sitting) string {
	var b strings.Builder
	var labels []string
	for _, g := range s.Garments {
		labels = append(labels, g.Label)
	}
	b.WriteString("# " + strings.Join(labels, " + ") + "\n\n")
	say := func(pattern string, a ...any) { b.WriteString(wrapped(fmt.Sprintf(pattern, a...), "", "")) }
	proof := "which is proved to be the least"
	if !s.Order.Proved {
		proof = fmt.Sprintf("and no order takes less than %.1f", s.Order.BoundMinutes)
	}
	say("%d steps: %.0f min of work, %.1f min of changes, %s. One garment after the other the changes would take %.1f min. Minutes are estimates.",
		s.Totals.Steps, s.Totals.SewMinutes, s.Order.ChangeMinutes, proof, s.InTurn)
	if len(s.Cautions) > 0 {
		b.WriteString("\n## Cautions\n\n")
	}
	for _, c := range s.Cautions {
		b.WriteString(wrapped(c.Text+" "+strings.ToUpper(c.Why[:1])+strings.TrimSuffix(c.Why[1:], ".")+".", "- ", "  "))
	}
	b.WriteString("\n## What to cut\n")
	var style length.Style
	_ = style.UnmarshalText([]byte(s.Units)) // one of its own words
	for _, g := range s.Garments {
		cutOf(&b, g, style)
	}
	b.WriteString("\n## Thread\n\n")
	for _, t := range s.Thread {
		fmt.Fprintf(&b, "- %s, %s: %.0f m\n", t.Colour, t.Kind, t.Metres)
	}
	b.WriteString("\n## Steps\n")
	ops := map[string]process.Operation{}
	for _, o := range s.Operations {
		ops[o.ID] = o
	}
	stations := map[string]string{}
	for _, st := range s.Stations {
		stations[st.Name] = st.Title
	}
	for _, step := range s.Steps {
		fmt.Fprintf(&b, "\n### %d · %s · %s\n\n", step.Number, stations[step.Station], step.Title)
		for _, c := range s.Changes {
			if c.BeforeStep == step.Number && c.What != "move" {
				from := ""
				if c.From != "" {
					from = " from " + c.From
				}
				b.WriteString(wrapped(fmt.Sprintf("Change: %s%s to %s, %.1f min.", c.What, from, c.To, c.Minutes), "> ", "> "))
			}
		}
		for _, id := range step.Operations {
			o := ops[id]
			b.WriteString(wrapped("**"+o.Part+".** "+o.Text+" Looks right: "+o.Good, "- [ ] ", "  "))
			for _, c := range s.Checks {
				if c.AfterOperation == id {
					b.WriteString(wrapped(fmt.Sprintf("Check. %s: %s, give or take %s.", c.What,
						length.Format(length.MM(c.Expect), style), length.Format(length.MM(c.Tolerance), style)), "- [ ] ", "  "))
				}
			}
		}
	}
	if len(s.Notices) > 0 {
		b.WriteString("\n## To know\n\n")
	}
	for _, n := range s.Notices {
		b.WriteString(wrapped(n.About+": "+n.Text, "- ", "  "))
	}
	return b.String()
}

// cutOf tells what is cut for one garment, and the cloth that it takes.
func cutOf(b *strings.Builder, g process.SittingGarment, style length.Style) {
	p := g.Plan
	fmt.Fprintf(b, "\n### %s\n\n", g.Label)
	size := func(mm float64) string { return length.Format(length.MM(mm), style) }
	for _, c := range p.Cloths {
		b.WriteString(wrapped(fmt.Sprintf("Cloth %s, %s: %s, by estimate %s.", c.Title, c.Colour, size(c.WidthMM)+" wide", length.Long(length.MM(c.LengthMM), style)), "- ", "  "))
	}
	for _, x := range p.Pieces {
		b.WriteString(wrapped(fmt.Sprintf("%d × %s: %s by %s", x.Count, x.Title, size(x.Width), size(x.Height)), "- ", "  "))
	}
	for _, x := range p.Strips {
		b.WriteString(wrapped(fmt.Sprintf("%d × %s: %s by %s, on the %s", x.Count*x.Lengths, x.Title, size(x.CutWidth), size(x.EachLength), x.On), "- ", "  "))
	}
	for _, x := range p.Interfacing {
		b.WriteString(wrapped(fmt.Sprintf("%d × %s: %s, %s by %s", x.Count, x.Title, x.MaterialTitle, size(x.Cut[0]), size(x.Cut[1])), "- ", "  "))
	}
}
