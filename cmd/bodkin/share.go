package main

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/sheets"
)

func shareCommand(s streams) *cobra.Command {
	var output, done, rate string
	var many int
	cmd := &cobra.Command{
		Use:   "share JOB [-o FILE]",
		Short: "Share the work of a job out among the people of the workroom",
		Long: `Share the work of a job out among the people whom the workroom names, the maker
first: who does what at which machine when, what is handed over to whom, and
what one more person or machine would change. Every person gets a bench sheet.
The ending of the output file decides its form as it does for plan. Without -o
the sheets go to standard output as Markdown. --for bench writes the bench
sheets alone, --detail brief leaves the reasons out, and --done shares out the
rest of work begun.

--many tells how so many of the garment would move down a row of tables, each
person doing her part of every one: the best rate for one person, two and so on,
and with --rate the fewest people for that.

A person of the workroom has a name, skills with levels (1 learning, 2 sure, 3
an old hand), a pace and hours:

  people:
    - {name: Ada, can: {press: 3, cut: 3, pin: 3, straight: 3, curves: 3, delicate: 3,
       hand: 3, fitting: 3}, from: "9:00", until: "17:00"}
    - {name: Bea, can: {press: 2, pin: 2, straight: 1}, pace: 1.5, from: "9:00", until: "11:00"}`,
		Example: `  bodkin share coat.yaml --workroom hall.yaml
  bodkin share coat.yaml -o benches.pdf
  bodkin share coat.yaml --done 1-7 --for bench -o rest.pdf
  bodkin share coat.yaml --many 20 --rate 1.5 -o row.pdf`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "JOB"),
		RunE: func(cmd *cobra.Command, args []string) error {
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			if err := knowsForm(output); err != nil {
				return err
			}
			if set.reader == string(sheets.Class) {
				return wrong("write maker or bench; bodkin class plans a class", "shared work has no sheet for a class")
			}
			line, err := readLine(many, rate)
			if err != nil {
				return err
			}
			g, err := gather(cmd.Context(), s, set, args[0])
			if err != nil {
				return err
			}
			if len(g.Workroom.People) == 0 {
				return wrong("name them in its file under people; bodkin share --help shows how", "the workroom names no people to share the work among")
			}
			if err := ready(output); err != nil {
				return err
			}
			if done != "" {
				whole, err := g.work(cmd.Context(), s, set)
				if err != nil {
					return err
				}
				if g.Begun, err = begin(whole, done); err != nil {
					return err
				}
			}
			share, err := g.shared(cmd.Context(), set)
			if _, all := errors.AsType[*process.DoneError](err); all {
				return wrong("name fewer steps", "with %s done, nothing is left to share", done)
			}
			if err != nil {
				return err
			}
			if line.Garments > 0 {
				if share.Row, err = process.Row(cmd.Context(), g.Input, line); err != nil {
					return g.placed(tooFast(err))
				}
			}
			p := document{compose: func(at string) sheets.Sheet { return sheets.ComposeShare(share, set.sheet(at)) }, value: share, head: share.Garment, apart: true}
			return g.unprintable(p.write(s, set, output))
		},
		ValidArgsFunction: completeJob,
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "`FILE` to write; its ending is the form: "+strings.Join(endings(), ", "))
	cmd.Flags().StringVar(&done, "done", "", "`STEPS` of the plan, seams or operations that are done, such as 1-7 or 1-3,neck")
	complete(cmd, "done", words(nil))
	cmd.Flags().IntVar(&many, "many", 0, "how `MANY` of the garment a row of tables is to make")
	complete(cmd, "many", words(nil))
	cmd.Flags().StringVar(&rate, "rate", "", "`GARMENTS` an hour that the row must give")
	complete(cmd, "rate", words(nil))
	addSettings(cmd.Flags(), "workroom", "shelf", "units", "paper", "type-size", "within", "for", "detail", "wording")
	completeSettings(cmd)
	complete(cmd, "output", completeOutput)
	return cmd
}

// readLine reads what is asked of a row of tables.
func readLine(many int, rate string) (process.Line, error) {
	line := process.Line{Garments: many}
	if many < 0 || many > 10_000 {
		return line, wrong("write a number from 1 to 10000", "--many cannot be %d", many)
	}
	if rate == "" {
		return line, nil
	}
	var err error
	if line.PerHour, err = strconv.ParseFloat(rate, 64); err != nil || !(line.PerHour >= 0.01 && line.PerHour <= 600) {
		return line, wrong("write garments an hour, such as 1.5", "--rate cannot be %q", rate)
	}
	if many == 0 {
		return line, wrong("write how many garments too, such as --many 20", "--rate asks for a row of tables")
	}
	return line, nil
}

// tooFast is, of a rate that no row keeps up with, what to ask for instead.
func tooFast(err error) error {
	r, ok := errors.AsType[*process.RateError](err)
	if !ok {
		return err
	}
	return wrong(fmt.Sprintf("ask for %.2g at the most, or set up two rows of half the rate each", r.Most), "--rate %g is too much: %v", r.Rate, r)
}

// shareNodes is the work of the search for a share: a second or two.
const shareNodes = 12_000

// shared works out the share. Those who ask for no time get a quick one.
func (g *gathered) shared(ctx context.Context, set settings) (*process.Share, error) {
	nodes := shareNodes
	search, cancel := context.WithTimeout(ctx, set.within)
	defer cancel()
	if set.within == 0 {
		nodes, search = 1, ctx
	}
	share, err := process.ShareOut(search, g.Input, nodes)
	return share, g.placed(err)
}
