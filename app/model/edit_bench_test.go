package model_test

import (
	"testing"

	"toewright/app/model"
	"toewright/internal/study"
)

// BenchmarkEdit changes a number of the demo, of which all says where it comes from.
func BenchmarkEdit(b *testing.B) {
	s := model.Open(study.Template{Key: "double-wishbone-rack"}.Document())
	x := 0.0
	for b.Loop() {
		x = 1 - x
		if err := s.Edit("wheelbase", "run", func(d *study.Document) { d.Vehicle.Wheelbase = 2480 + x }); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkAttribute is what of it goes into saying where numbers come from.
func BenchmarkAttribute(b *testing.B) {
	from := study.Template{Key: "double-wishbone-rack"}.Document()
	d := from.Clone()
	d.Vehicle.Wheelbase++
	for b.Loop() {
		d.Attribute(from, study.FromTyping)
	}
}
