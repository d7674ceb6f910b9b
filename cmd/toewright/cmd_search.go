package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newSearchCommand() *cobra.Command {
	var o engine.SearchOptions
	cmd := &cobra.Command{
		Use:   "search FILE",
		Short: "Find the values that bring toe change nearest to its target",
		Long: `Look for the values of the study's variables, within their bounds, that bring the
toe change nearest to its target over the whole window, and print them.

FILE - reads standard input. Searches start from many places within the bounds; how
many of them end at the same value tells how far the answer may be trusted to be
the best there is. Interrupted, the search prints the best so far.`,
	}
	call[*engine.SearchResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.SearchResult, error) {
			return engine.Search(ctx, d, o)
		},
		show: showSearch,
	}.setUp(cmd)
	options.Search(cmd.Flags(), &o)
	applied(cmd, "print the study with the answer as a candidate, on the steps and sizes stated, and nothing else", func(ctx context.Context, d *study.Document) (*study.Document, error) {
		r, err := engine.Search(ctx, d, o)
		if err != nil {
			return nil, err
		}
		return engine.ApplySearch(d, r), nil
	})
	return completeOptions(cmd)
}
