package main

import (
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"toewright/internal/study"
)

// completeStudy offers study files.
func completeStudy(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
}

// completeParts offers study files, then those of parts beside them.
func completeParts(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
}

// completeOptions offers values for the options of a call: words, the names of
// candidates once the file is given, and files where one is written.
func completeOptions(cmd *cobra.Command) *cobra.Command {
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if f.Name == partOption {
			return
		}
		offer := cobra.NoFileCompletions
		switch o, ok := f.Value.(*option); {
		case !ok:
		case o.Words != nil:
			offer = cobra.FixedCompletions(o.Words, cobra.ShellCompDirectiveNoFileComp)
		case o.OfCar:
			offer = completeCandidates
		}
		if err := cmd.RegisterFlagCompletionFunc(f.Name, offer); err != nil {
			panic(err) // The flag was just found, and is registered once.
		}
	})
	return cmd
}

// completeCandidates offers the names of the cars in the file.
func completeCandidates(cmd *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 || args[0] == standardInput {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	d, err := readStudy(args[0], cmd.InOrStdin())
	if err != nil {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	names := []string{study.BaseName}
	for _, c := range d.Candidates {
		names = append(names, c.Name)
	}
	return names, cobra.ShellCompDirectiveNoFileComp
}
