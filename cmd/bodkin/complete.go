package main

import (
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/sheets"
	"bodkin/templates"
)

// complete registers the completion of a flag. It can fail only for a flag that
// the command does not have, which a test would find.
func complete(cmd *cobra.Command, flag string, f cobra.CompletionFunc) {
	_ = cmd.RegisterFlagCompletionFunc(flag, f)
}

// completeSettings registers the completion of whatever settings a command has.
func completeSettings(cmd *cobra.Command) {
	for _, n := range settingNames() {
		if settingFlag(cmd.Flags(), n) == nil {
			continue
		}
		switch n {
		case "workroom":
			complete(cmd, n, yamlFiles)
		case "shelf":
			complete(cmd, n, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				return nil, cobra.ShellCompDirectiveDefault // files and folders
			})
		case "wording":
			complete(cmd, n, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
				return nil, cobra.ShellCompDirectiveFilterDirs
			})
		case "units":
			complete(cmd, n, words(unitWords()))
		case "paper":
			complete(cmd, n, words(papers()))
		case "for":
			complete(cmd, n, words(sheets.Readers()))
		case "detail":
			complete(cmd, n, words(details()))
		case "figures":
			complete(cmd, n, words(figurePlaces()))
		default:
			complete(cmd, n, words(nil))
		}
	}
}

func words(list []string) cobra.CompletionFunc {
	return cobra.FixedCompletions(list, cobra.ShellCompDirectiveNoFileComp)
}

func yamlFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// completeJob offers YAML files for the first argument.
func completeJob(cmd *cobra.Command, args []string, word string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return yamlFiles(cmd, args, word)
}

// completeOutput offers the endings once a dot is written, and files of those
// endings before.
func completeOutput(_ *cobra.Command, _ []string, word string) ([]string, cobra.ShellCompDirective) {
	stem := strings.TrimSuffix(word, filepath.Ext(word))
	var files, bare []string
	for _, e := range endings() {
		files = append(files, stem+e)
		bare = append(bare, strings.TrimPrefix(e, "."))
	}
	if stem != "" && stem != word && filepath.Base(word) != ".." {
		return files, cobra.ShellCompDirectiveNoFileComp
	}
	return bare, cobra.ShellCompDirectiveFilterFileExt
}

// completeGarment offers the garments of the shelf.
func completeGarment(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return templates.Names(), cobra.ShellCompDirectiveNoFileComp
}

// completeKind offers the kinds of the shelf, and after a kind its entries
// where named is true.
func completeKind(named bool) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		switch {
		case len(args) == 0:
			return kindNames(), cobra.ShellCompDirectiveNoFileComp
		case len(args) == 1 && named:
			entries, err := entriesOf(cmd, args[0])
			if err != nil {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			var names []string
			for _, e := range entries {
				names = append(names, cobra.CompletionWithDesc(e.Name, e.Title))
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		}
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
}

// completeSeam offers jobs, and after a job the seams of its garment.
func completeSeam(s streams) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, word string) ([]string, cobra.ShellCompDirective) {
		if len(args) == 0 {
			return yamlFiles(cmd, args, word)
		}
		set, err := loadSettings(cmd.Flags())
		if err != nil || len(args) > 2 || args[0] == "-" {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		g, err := gather(cmd.Context(), s, set, demoOr(args[0]))
		if err != nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		plan, err := process.Work(cmd.Context(), g.Input, order.Options{Nodes: order.NoSearch})
		if err != nil {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		var names []string
		for _, x := range plan.Seams {
			names = append(names, cobra.CompletionWithDesc(x.Name, x.Title))
		}
		return names, cobra.ShellCompDirectiveNoFileComp
	}
}
