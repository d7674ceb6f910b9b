package main

import (
	"context"

	"github.com/spf13/cobra"

	"toewright/internal/engine"
	"toewright/internal/options"
	"toewright/internal/study"
)

func newTradeOffCommand() *cobra.Command {
	var o engine.TradeOffOptions
	cmd := &cobra.Command{
		Use:   "tradeoff FILE",
		Short: "Weigh toe change against a second aim",
		Long: `Repeat the study's search with a second aim held ever smaller, and print the designs
between the least toe change and the least of the aim: the distance from the stock
parts, the Ackermann error, or the change of the steering ratio.

FILE - reads standard input.`,
	}
	call[*engine.TradeOffResult]{
		ask: func(ctx context.Context, d *study.Document) (*engine.TradeOffResult, error) {
			return engine.TradeOff(ctx, d, o)
		},
		show: showTradeOff,
	}.setUp(cmd)
	options.TradeOff(cmd.Flags(), &o)
	return completeOptions(cmd)
}

// showTradeOff prints a row for each design.
func showTradeOff(r *report, f *engine.TradeOffResult) {
	t := &table{}
	header := []string{"rms " + r.toeUnit(), "largest " + r.toeUnit(), f.Aim + " " + f.AimUnit}
	for _, v := range r.study.Search.Variables {
		header = append(header, v.Parameter)
	}
	t.add(header...)
	for _, d := range f.Designs {
		row := []string{r.toe(float64(d.RMS)), r.toe(float64(d.Peak)), fixed(float64(d.Aim), 3)}
		for _, v := range r.study.Search.Variables {
			value, unit := r.parameter(v.Parameter, d.Values[v.Parameter])
			row = append(row, value+" "+unit)
		}
		t.add(row...)
	}
	r.table(t)
}
