package main

import (
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/sheets"
)

func planCommand(s streams) *cobra.Command {
	var output, done, steps string
	cmd := &cobra.Command{
		Use:   "plan [JOB] [-o FILE]",
		Short: "Plan a job and print its step sheet",
		Long: `Plan a job and print its step sheet. Without a job the demo is planned; - reads
the job from standard input. The ending of the output file decides its form:
.pdf for paper, .html for a browser or a phone, .md for Markdown with a folder
of figures beside it, .json for other programs. Without -o the sheet goes to
standard output as Markdown. A spreadsheet reads .operations.csv, .cut.csv and
.thread.csv: lengths in mm, times in minutes.

--for bench writes an assistant's sheet, of some steps with --steps; --for class
a learner's, with the same numbers. --detail brief leaves the reasons out.

Where the work has been begun, --done says what is done, by the steps of the
plan or by names of seams and operations; the rest is planned anew from the
present state of the machines.`,
		Example: `  bodkin plan -o sheet.pdf
  bodkin plan coat.yaml -o coat.pdf --paper letter --units in
  bodkin plan coat.yaml -o coat.json
  bodkin plan coat.yaml -o coat.cut.csv
  bodkin plan coat.yaml --for bench --steps 3-7 -o helper.pdf
  bodkin plan coat.yaml --done 1-7 -o rest.pdf`,
		DisableFlagsInUseLine: true,
		Args:                  wants(0, "JOB"),
		RunE: func(cmd *cobra.Command, args []string) error {
			set, err := loadSettings(cmd.Flags())
			if err != nil {
				return err
			}
			if err := knowsPlanForm(output); err != nil {
				return err
			}
			g, err := gather(cmd.Context(), s, set, first(args))
			if err != nil {
				return err
			}
			if err := ready(output); err != nil {
				return err
			}
			plan, err := g.planned(cmd.Context(), s, set, done)
			if err != nil {
				return err
			}
			if set.steps, err = stepNumbers(plan, steps); err != nil {
				return err
			}
			return g.unprintable(planDocument(plan, set).write(s, set, output))
		},
		ValidArgsFunction: completeJob,
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "`FILE` to write; its ending is the form: "+strings.Join(endings(), ", "))
	addPlanFlags(cmd, &done, &steps)
	return cmd
}

// addPlanFlags gives a command what step sheets are written by.
func addPlanFlags(cmd *cobra.Command, done, steps *string) {
	cmd.Flags().StringVar(done, "done", "", "`STEPS`, seams or operations that are done, such as 1-7 or 1-3,neck")
	complete(cmd, "done", words(nil))
	cmd.Flags().StringVar(steps, "steps", "", "`STEPS` that the sheet tells, such as 3-7; else all")
	complete(cmd, "steps", words(nil))
	addSettings(cmd.Flags(), "workroom", "shelf", "units", "paper", "type-size", "within", "for", "detail", "figures", "wording")
	completeSettings(cmd)
	complete(cmd, "output", completeOutput)
}

// planDocument is the sheet of a plan, with its tables.
func planDocument(plan *process.Plan, set settings) document {
	d := set.stepSheet(func(o sheets.Options) sheets.Sheet { return sheets.Compose(plan, o) })
	d.value, d.head, d.room = plan, plan.GarmentName, plan.Workroom
	d.tables = map[string]func() []byte{
		"operations": func() []byte { return sheets.OperationsCSV(plan) },
		"cut":        func() []byte { return sheets.CutListCSV(plan) },
		"thread":     func() []byte { return sheets.ThreadCSV(plan) },
	}
	return d
}

func first(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}

// planFor is a plan for a command that prints words about it.
func planFor(cmd *cobra.Command, s streams, job string) (*process.Plan, error) {
	set, err := loadSettings(cmd.Flags())
	if err != nil {
		return nil, err
	}
	g, err := gather(cmd.Context(), s, set, job)
	if err != nil {
		return nil, err
	}
	return g.work(cmd.Context(), s, set)
}
