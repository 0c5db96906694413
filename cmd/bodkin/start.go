package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

func startCommand(s streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "start GARMENT",
		Short: "Write a commented job for a garment to standard output",
		Long: `Write a commented job for a garment of the shelf to standard output, with a
figure for every measure and choice, to be changed to your own. Lengths are in
the units of --units, else of your workroom, else in cm.`,
		Example: `  bodkin start open-jacket > coat.yaml
  bodkin start pull-on-skirt --units in > skirt.yaml`,
		DisableFlagsInUseLine: true,
		Args:                  wants(1, "GARMENT"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, err := startJob(cmd, args[0])
			if err != nil {
				return err
			}
			_, _ = s.out.Write(job) // run tells of a failure
			return nil
		},
		ValidArgsFunction: completeGarment,
	}
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
