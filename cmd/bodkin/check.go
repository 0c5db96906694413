package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/length"
)

func checkCommand(s streams) *cobra.Command {
	var output string
	cmd := &cobra.Command{
		Use:   "check [JOB | GARMENT-FILE]",
		Short: "Check a job or a garment and tell what was understood",
		Long: `Check works a job out as plan does and tells in a few lines what was understood,
what was assumed, and how each seam would be sewn. It writes no file. The first
column has the names that a job's seams: and bodkin why know.

Of a garment's file it tells the pieces, joins and edges at the garment's usual
measures, and what does not match: edges of unlike length, an edge that nothing
becomes of, an opening that does not go over head or hips. With -o it draws the
pieces.`,
		Example: `  bodkin check coat.yaml
  bodkin start --blank > skirt.yaml
  bodkin check skirt.yaml -o skirt.svg`,
		DisableFlagsInUseLine: true,
		Args:                  wants(0, "JOB"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if file, ok, err := garmentFile(first(args)); err != nil || ok {
				if err != nil {
					return err
				}
				set, err := loadSettings(cmd.Flags())
				if err != nil {
					return err
				}
				if err := drawable(output); err != nil {
					return err
				}
				return checkGarment(cmd.Context(), s, set, file, output)
			}
			if output != "" {
				return wrong("bodkin plan draws a job", "check draws a garment's file only")
			}
			plan, err := planFor(cmd, s, first(args))
			if err != nil {
				return err
			}
			fmt.Fprint(s.out, summary(plan))
			return nil
		},
		ValidArgsFunction: completeJob,
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "`FILE.svg` to draw a garment's pieces in")
	addSettings(cmd.Flags(), "workroom", "shelf", "units", "within")
	completeSettings(cmd)
	return cmd
}

// garmentFile reads a file that holds a garment; it is not ok for any other.
func garmentFile(name string) (file seams.File, ok bool, err error) {
	if name == "" || name == "-" {
		return file, false, nil
	}
	file.Name = name
	if file.Data, err = readFile(name); err != nil {
		return file, false, err
	}
	return file, garmentLine.Match(file.Data), nil
}

// drawable refuses an output that is not to be an SVG, or cannot be written.
func drawable(output string) error {
	if output == "" {
		return nil
	}
	if !strings.EqualFold(filepath.Ext(output), ".svg") {
		return wrong("end it in .svg", "the pieces are drawn as SVG, not as %s", output)
	}
	return ready(output)
}

// summary is the plan in a few lines.
func summary(plan *process.Plan) string {
	style := styleOf(plan)
	var b strings.Builder
	write := func(format string, args ...any) { b.WriteString(wrapped(fmt.Sprintf(format, args...), "", "  ")) }
	what := plan.Title
	if plan.Title != plan.GarmentName {
		what += ": " + plan.GarmentName
	}
	if plan.Quantity > 1 {
		what += fmt.Sprintf(", %d of them", plan.Quantity)
	}
	var cloths []string
	for _, c := range plan.Cloths {
		if !slices.Contains(cloths, c.Title) {
			cloths = append(cloths, c.Title)
		}
	}
	write("%s, in %s", what, strings.Join(cloths, " and "))
	if plan.Workroom != "" {
		write("workroom: %s", plan.Workroom)
	}
	if given := assumed(plan, style); given != "" {
		write("not given, so the garment's own: %s", given)
	}
	var t table
	for _, x := range plan.Seams {
		allowance := ""
		if x.Allowance > 0 {
			allowance = length.Format(length.MM(x.Allowance), style) + " allowance"
		}
		t.row("  "+x.Name, x.Title, x.ConstructionTitle, allowance)
	}
	fmt.Fprintf(&b, "\n%s\n", t)
	write("%d operations in %d steps, about %.0f minutes of work and %.0f of changes", plan.Totals.Operations,
		plan.Totals.Steps, plan.Totals.SewMinutes, plan.Totals.ChangeMinutes)
	if plan.Order.Proved {
		write("no order of them takes fewer minutes of change; that is proved")
	} else {
		write("an order with fewer minutes of change may exist, but none with fewer than %.1f", plan.Order.BoundMinutes)
	}
	for _, n := range plan.Notices {
		write("%s: %s", n.About, n.Text)
	}
	return b.String()
}

// assumed are the measures and choices that the job left to the garment.
func assumed(plan *process.Plan, style length.Style) string {
	var out []string
	for _, m := range append(plan.Measures[:len(plan.Measures):len(plan.Measures)], plan.Choices...) {
		if !m.Default {
			continue
		}
		value := m.Word
		switch {
		case m.MM != 0:
			value = length.Format(length.MM(m.MM), style)
		case m.Word == "":
			value = fmt.Sprint(m.Number)
		}
		out = append(out, m.Name+" "+value)
	}
	return strings.Join(out, ", ")
}

func styleOf(plan *process.Plan) length.Style {
	if plan.Units == length.Inches.String() {
		return length.Inches
	}
	return length.Centimetres
}
