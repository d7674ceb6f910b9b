//go:build unix

package engine

import (
	"syscall"
	"testing"
	"time"
)

// processorTime returns what this process has used of all processors.
func processorTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkTradeOff weighs nine designs in six set-ups against each aim, with limits and
// without, and reports the processor time as a multiple of that of one search of the same
// study: the least of each, by turns.
func BenchmarkTradeOff(b *testing.B) {
	d := inSixSetUps()
	for _, bb := range limitsBenched(d) {
		b.Run(bb.name, func(b *testing.B) {
			e := d.Clone()
			e.Search.Limits = bb.limits
			least := map[string]time.Duration{}
			timed := func(name string, do func() error) {
				start := processorTime()
				if err := do(); err != nil {
					b.Fatal(err)
				}
				if used := processorTime() - start; least[name] == 0 || used < least[name] {
					least[name] = used
				}
			}
			aims := []string{"stock", "ackermann", "ratio"}
			for b.Loop() {
				timed("search", func() error {
					_, err := Search(b.Context(), e, SearchOptions{})
					return err
				})
				for _, aim := range aims {
					timed(aim, func() error {
						_, err := TradeOff(b.Context(), e, TradeOffOptions{Aim: aim, Designs: new(9)})
						return err
					})
				}
			}
			b.ReportMetric(least["search"].Seconds(), "s/search")
			for _, aim := range aims {
				b.ReportMetric(least[aim].Seconds()/least["search"].Seconds(), "searches/"+aim)
			}
		})
	}
}
