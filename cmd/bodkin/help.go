package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// usage writes how a command is called: its line, examples, subcommands, flags,
// and those flags that may be set as variables too.
func usage(cmd *cobra.Command) error {
	var b strings.Builder
	fmt.Fprintf(&b, "Usage:\n  %s\n", cmd.UseLine())
	if cmd.Example != "" {
		fmt.Fprintf(&b, "\nExamples:\n%s\n", cmd.Example)
	}
	var commands table
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() {
			commands.row("  "+c.Name(), c.Short)
		}
	}
	if len(commands.rows) > 0 {
		fmt.Fprintf(&b, "\nCommands:\n%s", commands)
	}
	var flags, settings []*pflag.Flag
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		switch {
		case f.Hidden:
		case isSetting(f):
			settings = append(settings, f)
		default:
			flags = append(flags, f)
		}
	})
	fmt.Fprintf(&b, "\nFlags:\n%s", flagList(flags))
	if len(settings) > 0 {
		fmt.Fprintf(&b, "\nSettings (each also as a variable, such as %s; the flag wins):\n%s",
			variableOf(settings[0].Name), flagList(settings))
	}
	if cmd.HasAvailableSubCommands() {
		fmt.Fprintf(&b, "\n%s COMMAND --help tells more of a command.\n", cmd.CommandPath())
	}
	_, err := fmt.Fprint(cmd.OutOrStdout(), b.String())
	return err
}

// flagList is flags with what they do, in columns.
func flagList(flags []*pflag.Flag) string {
	const wide = 24
	var b strings.Builder
	for _, f := range flags {
		value, about := pflag.UnquoteUsage(f)
		name := "      --" + f.Name
		if f.Shorthand != "" {
			name = "  -" + f.Shorthand + ", --" + f.Name
		}
		if f.Value.Type() != "bool" {
			name += " " + value
		}
		if f.DefValue != "" && f.DefValue != "false" && f.DefValue != "[]" {
			about += " (usually " + f.DefValue + ")"
		}
		b.WriteString(wrapped(about, fmt.Sprintf("%-*s  ", wide, name), strings.Repeat(" ", wide+2)))
	}
	return b.String()
}

func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:                   "help [COMMAND]",
		Short:                 "Tell about a command",
		DisableFlagsInUseLine: true,
		Args: func(cmd *cobra.Command, args []string) error {
			if found, rest, err := cmd.Root().Find(args); err == nil && len(rest) == 0 && (found != cmd.Root() || len(args) == 0) {
				return nil
			}
			return noSuchCommand(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			found, _, err := cmd.Root().Find(args)
			if err != nil {
				return err
			}
			found.InitDefaultHelpFlag()
			found.InitDefaultVersionFlag()
			return found.Help()
		},
		ValidArgsFunction: func(cmd *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return commandNames(cmd.Root()), cobra.ShellCompDirectiveNoFileComp
		},
	}
}
