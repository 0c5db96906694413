package main

import (
	"context"
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/sheets"
)

func sittingCommand(s streams) *cobra.Command {
	var output, done, steps string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "sitting JOB JOB... [-o FILE]",
		Short: "Plan several garments in one sitting, in one order",
		Long: `Sitting plans several jobs together: one order over all of them, so that what is
sewn in one colour is sewn in one go whatever garment it is of. Each step says
which garment it is of; the sheet has what to cut for each, all that is laid out
for them together, and what the changes would take if one garment were finished
before the next. The ending of the output file decides its form as it does for
plan, and so do --for, --detail and --steps.

What a job pins, orders or wishes holds within its garment. How a job finds the
machines and wants them left, and the cones that it counts, hold for all.

--done says what is done already, by the steps of the sitting or by names with
the garment's number before them, as in 2/side; the rest is planned anew from
the present state of the machines.`,
		Example: `  bodkin sitting skirt.yaml top.yaml
  bodkin sitting skirt.yaml top.yaml -o both.pdf --paper a5
  bodkin sitting skirt.yaml top.yaml --done 1-7,2/side -o rest.html
  bodkin sitting skirt.yaml top.yaml -o both.operations.csv`,
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
			if asJSON && !toStandardOutput(output) {
				return wrong("leave --json out and let the file's name end in .json", "--json writes to standard output, and -o to a file")
			}
			if err := knowsPlanForm(output); err != nil {
				return err
			}
			jobs, err := gatherAll(cmd.Context(), s, set, args)
			if err != nil {
				return err
			}
			if err := ready(output); err != nil {
				return err
			}
			all, err := jobs.planned(cmd.Context(), s, set, done)
			if err != nil {
				return err
			}
			if set.steps, err = stepNumbers(all.Joint(), steps); err != nil {
				return err
			}
			if asJSON {
				return printJSON(s, all)
			}
			return jobs.together().unprintable(sittingDocument(all, set).write(s, set, output))
		},
		ValidArgsFunction: yamlFiles,
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "`FILE` to write; its ending is the form: "+strings.Join(endings(), ", "))
	cmd.Flags().BoolVar(&asJSON, "json", false, "write the sitting, with the plan of each garment, as JSON")
	addPlanFlags(cmd, &done, &steps)
	return cmd
}

// sittingDocument is the sheet of a sitting, with its tables.
func sittingDocument(all *process.Sitting, set settings) document {
	d := set.stepSheet(func(o sheets.Options) sheets.Sheet { return sheets.ComposeSitting(all, o) })
	d.value, d.head, d.room = all, all.Joint().Title, all.Workroom
	d.tables = map[string]func() []byte{
		"operations": func() []byte { return sheets.SittingOperationsCSV(all) },
		"cut":        func() []byte { return sheets.SittingCutListCSV(all) },
		"thread":     func() []byte { return sheets.SittingThreadCSV(all) },
	}
	return d
}

// sitters are the jobs of a sitting.
type sitters []*gathered

// gatherAll reads the jobs.
func gatherAll(ctx context.Context, s streams, set settings, jobs []string) (sitters, error) {
	var all sitters
	for _, job := range jobs {
		g, err := gather(ctx, s, set, demoOr(job))
		if err != nil {
			return nil, err
		}
		all = append(all, g)
	}
	return all, nil
}

// together has the files of all jobs.
func (all sitters) together() *gathered {
	var every gathered
	for _, g := range all {
		every.files, every.own = append(every.files, g.files...), g.own
	}
	return &every
}

// planned is the sitting; of one begun, the rest of it, worked out from the present
// state of the room.
func (all sitters) planned(ctx context.Context, s streams, set settings, done string) (*process.Sitting, error) {
	whole, err := all.sit(ctx, s, set, nil)
	if err != nil || done == "" {
		return whole, err
	}
	begun, err := begin(whole.Joint(), done)
	if err != nil {
		return nil, err
	}
	rest, err := all.sit(ctx, s, set, begun)
	return rest, nothingLeft(err, done)
}

// sit plans the jobs together. Faults are shown with the lines of all their files.
func (all sitters) sit(ctx context.Context, s streams, set settings, begun *process.Begun) (*process.Sitting, error) {
	var ins []process.Input
	for _, g := range all {
		ins = append(ins, g.Input)
	}
	search, opts, cancel := set.search(ctx, s)
	defer cancel()
	sitting, err := process.Sit(search, ins, begun, opts)
	if one, ok := errors.AsType[*process.GarmentError](err); ok {
		return nil, all[one.Garment].placed(one.Err)
	}
	if err != nil {
		return nil, all.together().placed(err)
	}
	interrupted(ctx, s, sitting.Order)
	return sitting, nil
}
