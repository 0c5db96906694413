package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/sheets"
	"bodkin/templates"
)

func startCommand(s streams) *cobra.Command {
	var blank, wording bool
	cmd := &cobra.Command{
		Use:   "start GARMENT | --blank | --wording",
		Short: "Write a commented job for a garment to standard output",
		Long: `Write a commented job for a garment of the shelf to standard output, with a
figure for every measure and choice, to be changed to your own. Lengths are in
the units of --units, else of your workroom, else in cm.

--blank writes a garment instead: a small one with comments, to be changed to
one of your own. A job names it by its path.

--wording writes every sentence that the sheets have of their own, under its
name: keep those that you say another way, and name the file to bodkin plan.`,
		Example: `  bodkin start open-jacket > coat.yaml
  bodkin start pull-on-skirt --units in > skirt.yaml
  bodkin start --blank > my-skirt.yaml
  bodkin start --wording > words/mine.yaml`,
		DisableFlagsInUseLine: true,
		Args: func(cmd *cobra.Command, args []string) error {
			if blank || wording {
				return wants(0)(cmd, args)
			}
			return wants(1, "GARMENT")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if blank {
				_, _ = s.out.Write(templates.Blank()) // run tells of a failure
				return nil
			}
			if wording {
				_, _ = s.out.Write(sheets.English().YAML())
				return nil
			}
			job, err := startJob(cmd, args[0])
			if err != nil {
				return err
			}
			_, _ = s.out.Write(job) // run tells of a failure
			return nil
		},
		ValidArgsFunction: completeGarment,
	}
	cmd.Flags().BoolVar(&blank, "blank", false, "write a small garment to be changed to your own")
	cmd.Flags().BoolVar(&wording, "wording", false, "write the sentences of the sheets to be changed to your own")
	cmd.MarkFlagsMutuallyExclusive("blank", "wording")
	addSettings(cmd.Flags(), "workroom", "shelf", "units")
	completeSettings(cmd)
	return cmd
}

func startJob(cmd *cobra.Command, name string) ([]byte, error) {
	set, err := loadSettings(cmd.Flags())
	if err != nil {
		return nil, err
	}
	if names := templates.Names(); !slices.Contains(names, name) {
		return nil, unknown(name, names, "garments are "+strings.Join(names, ", "), "no garment %q on the shelf", name)
	}
	garment, err := templates.Load(name)
	if err != nil {
		return nil, err
	}
	own, err := ownFiles(set.shelf)
	if err != nil {
		return nil, err
	}
	shelf, err := seams.Load(own...)
	if err != nil {
		return nil, err
	}
	if set.units == "" {
		var g gathered
		room, err := g.workroom(set, seams.File{})
		if err != nil {
			return nil, g.placed(err)
		}
		set.units = room.Units.Value
	}
	style := length.Centimetres
	if set.units == "in" {
		style = length.Inches
	}
	return process.StartJob(garment, shelf, style), nil
}
