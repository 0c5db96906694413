package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/sheets"
)

func classCommand(s streams) *cobra.Command {
	var output, paper string
	var hold, renumber bool
	cmd := &cobra.Command{
		Use:   "class CLASS [-o FILE]",
		Short: "Plan a class in which everybody sews the same garment in step",
		Long: `Plan a class in which everybody sews one garment, each in her own size and cloth.
All have the same numbers: a number is the same act on the same part for
everybody. Where cloths ask for different seams a number has variants, and who
does not need it is free. The work is cut into sessions that end where it can
rest; the teacher is told what to show when, what to thread and where a line
forms.

The papers are a handout for all, a page for each student, the teacher's run
sheet and the materials; --sheet writes one of them alone. --hold writes the
numbers into the class's file: from then on they stay, and what comes in later
is numbered 12a. Where they cannot stay, bodkin says so; --renumber lets them go.`,
		Example: `  bodkin class tops.yaml -o tops.pdf
  bodkin class tops.yaml --sheet teacher -o run-sheet.pdf
  bodkin class tops.yaml --hold`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "CLASS"),
		RunE: func(cmd *cobra.Command, args []string) error {
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			if err := knowsForm(output); err != nil {
				return err
			}
			if paper != "" && !slices.Contains(sheets.ClassParts(), paper) {
				return unknown(paper, sheets.ClassParts(), "write one of "+strings.Join(sheets.ClassParts(), ", "), "no sheet %q of a class", paper)
			}
			if hold && args[0] == "-" {
				return wrong("name the class's file", "the numbers cannot be held in standard input")
			}
			if err := ready(output); err != nil {
				return err
			}
			plan, g, err := teach(cmd.Context(), s, set, args[0], renumber)
			if err != nil {
				return err
			}
			held := g.files[0]
			p := document{compose: func(at string) sheets.Sheet {
				return sheets.ComposeClass(plan, sheets.ClassPart(paper), sheets.Options{FiguresAt: at, Units: set.units, Wording: set.wording})
			}, value: plan, head: plan.GarmentName, apart: true, stepHead: sheets.Options{For: sheets.Class}.StepHead()}
			if hold {
				if err := writeFiles([]file{{held.Name, withNumbers(held.Data, plan)}}); err != nil {
					return err
				}
				if output == "" {
					fmt.Fprintf(s.err, "bodkin: %s holds %d numbers now\n", held.Name, len(plan.Numbers))
					return nil
				}
			}
			return g.unprintable(p.write(s, set, output))
		},
		ValidArgsFunction: completeJob,
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "`FILE` to write; its ending is the form: "+strings.Join(endings(), ", "))
	cmd.Flags().StringVar(&paper, "sheet", "", "one `PAPER` alone: "+strings.Join(sheets.ClassParts(), ", "))
	cmd.Flags().BoolVar(&hold, "hold", false, "write the numbers into the class's file, so that they stay")
	cmd.Flags().BoolVar(&renumber, "renumber", false, "let go of the numbers that are held")
	addSettings(cmd.Flags(), "shelf", "units", "paper", "type-size", "within", "wording")
	completeSettings(cmd)
	complete(cmd, "output", completeOutput)
	complete(cmd, "sheet", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return sheets.ClassParts(), cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

// teach reads a class and works it out. It returns what was read too, the class's
// file first.
func teach(ctx context.Context, s streams, set settings, name string, renumber bool) (*process.ClassPlan, *gathered, error) {
	g := &gathered{}
	c := seams.File{Name: name}
	var err error
	if name == "-" {
		c.Name = standardInput
		c.Data, err = readInput(ctx, s.in)
	} else {
		c.Data, err = readFile(name)
	}
	if err != nil {
		return nil, g, err
	}
	g.files = append(g.files, c)
	class, err := process.ParseClass(c.Name, c.Data)
	if err != nil {
		return nil, g, g.placed(err)
	}
	if set.units != "" {
		class.Units = form.Text{Value: set.units}
	}
	if renumber {
		class.Numbers = nil
	}
	g.Job = &process.Job{Make: class.Make}
	if err := g.garment(c.Name); err != nil {
		return nil, g, g.placed(err)
	}
	if g.own, err = ownFiles(set.shelf); err != nil {
		return nil, g, err
	}
	if g.Shelf, err = seams.Load(g.own...); err != nil {
		return nil, g, g.placed(err)
	}
	opts := order.Options{}
	search, cancel := context.WithTimeout(ctx, set.within)
	defer cancel()
	if set.within == 0 {
		opts.Nodes, search = order.NoSearch, ctx
	}
	plan, err := process.Teach(search, process.ClassInput{Class: class, Garment: g.Garment, Shelf: g.Shelf}, opts)
	if r, ok := errors.AsType[*process.RenumberError](err); ok {
		return nil, g, cannot("keep that student's work as it was, or run it again with --renumber and give everybody new papers", "the numbers cannot stay: %s", r.Error())
	}
	return plan, g, g.placed(err)
}

// numbersBlock is the numbers of a class's file, as written below.
var numbersBlock = regexp.MustCompile(`(?m)^numbers:.*\n(?:[ \t]+.*\n|[ \t]*\n)*`)

// withNumbers puts the numbers of a plan into the class's file, in place of
// those it had.
func withNumbers(data []byte, plan *process.ClassPlan) []byte {
	var out bytes.Buffer
	out.Write(bytes.TrimRight(numbersBlock.ReplaceAll(append(bytes.TrimRight(data, "\n"), '\n'), nil), "\n"))
	out.WriteString("\n\nnumbers: # held, since they are on paper; bodkin class --renumber lets them go\n")
	for _, n := range plan.Numbers {
		fmt.Fprintf(&out, "  %q: %s\n", n.Number, n.Key)
	}
	return out.Bytes()
}
