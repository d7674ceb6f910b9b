package step

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Write returns the file of a model. It has no date, so that the same model gives the same
// file.
func Write(m *Model) []byte {
	w := &writer{}
	w.text.WriteString("ISO-10303-21;\nHEADER;\n")
	fmt.Fprintf(&w.text, "FILE_DESCRIPTION(('%s'),'2;1');\n", encode(m.Name))
	fmt.Fprintf(&w.text, "FILE_NAME('%s','',('%s'),(''),'%s','%s','');\n", encode(m.Name), encode(m.Author), encode(m.Origin), encode(m.Origin))
	w.text.WriteString("FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\nDATA;\n")
	w.model(m)
	w.text.WriteString("ENDSEC;\nEND-ISO-10303-21;\n")
	return []byte(w.text.String())
}

// ref is the number of an instance.
type ref int

// String returns it as other instances name it.
func (r ref) String() string { return "#" + strconv.Itoa(int(r)) }

// refs returns a list of instances.
func refs(list []ref) string {
	var words []string
	for _, r := range list {
		words = append(words, r.String())
	}
	return "(" + strings.Join(words, ",") + ")"
}

// writer numbers instances as it writes them.
type writer struct {
	text strings.Builder
	last ref
}

// add writes an instance and returns its number.
func (w *writer) add(format string, args ...any) ref {
	w.last++
	fmt.Fprintf(&w.text, "%s=%s;\n", w.last, fmt.Sprintf(format, args...))
	return w.last
}

func (w *writer) model(m *Model) {
	definition := w.product(m)
	context := w.context()
	frame := w.placement("", Vec{}, Vec{0, 0, 1})
	set := w.add("GEOMETRIC_CURVE_SET('%s',%s)", encode(m.Name), refs(w.items(m)))
	shape := w.add("GEOMETRICALLY_BOUNDED_WIREFRAME_SHAPE_REPRESENTATION('%s',(%s,%s),%s)", encode(m.Name), frame, set, context)
	w.add("SHAPE_DEFINITION_REPRESENTATION(%s,%s)", definition, shape)
}

// product writes what the shape belongs to and returns its property.
func (w *writer) product(m *Model) ref {
	application := w.add("APPLICATION_CONTEXT('automotive design')")
	w.add("APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,%s)", application)
	context := w.add("PRODUCT_CONTEXT('',%s,'mechanical')", application)
	product := w.add("PRODUCT('%s','%s','',(%s))", encode(cmp.Or(m.Number, m.Name)), encode(m.Name), context)
	w.add("PRODUCT_RELATED_PRODUCT_CATEGORY('part','',(%s))", product)
	formation := w.add("PRODUCT_DEFINITION_FORMATION('','',%s)", product)
	stage := w.add("PRODUCT_DEFINITION_CONTEXT('part definition',%s,'design')", application)
	definition := w.add("PRODUCT_DEFINITION('design','',%s,%s)", formation, stage)
	return w.add("PRODUCT_DEFINITION_SHAPE('','',%s)", definition)
}

// accuracy is the distance, mm, below which places are the same to a reader.
const accuracy = 1e-7

// context writes the units.
func (w *writer) context() ref {
	length := w.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))")
	angle := w.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))")
	solid := w.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())")
	same := w.add("UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(%s),%s,'distance_accuracy_value','')", real(accuracy), length)
	return w.add("(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((%s))GLOBAL_UNIT_ASSIGNED_CONTEXT((%s,%s,%s))REPRESENTATION_CONTEXT('',''))",
		same, length, angle, solid)
}

// items writes all points and curves.
func (w *writer) items(m *Model) (list []ref) {
	for _, p := range m.Points {
		list = append(list, w.point(p.Name, p.At))
	}
	for i := range m.Lines {
		list = append(list, w.line(&m.Lines[i]))
	}
	for _, c := range m.Circles {
		place := w.placement(c.Name, c.Centre, c.Axis)
		list = append(list, w.add("CIRCLE('%s',%s,%s)", encode(c.Name), place, real(c.Radius)))
	}
	return list
}

func (w *writer) point(name string, at Vec) ref {
	return w.add("CARTESIAN_POINT('%s',%s)", encode(name), reals(at))
}

func (w *writer) direction(v Vec) ref { return w.add("DIRECTION('',%s)", reals(v)) }

// placement writes an axis at a place; across it points wherever.
func (w *writer) placement(name string, at, axis Vec) ref {
	centre := w.point(name, at)
	z, x := w.direction(axis), w.direction(square(axis))
	return w.add("AXIS2_PLACEMENT_3D('%s',%s,%s,%s)", encode(name), centre, z, x)
}

// line writes a line through a point of its own name, and trims it.
func (w *writer) line(l *Line) ref {
	through := w.point(l.Name, l.Through)
	vector := w.add("VECTOR('',%s,1.)", w.direction(l.Along))
	line := w.add("LINE('%s',%s,%s)", encode(l.Name), through, vector)
	from, to := w.point("", l.at(l.From)), w.point("", l.at(l.To))
	return w.add("TRIMMED_CURVE('%s',%s,(%s,PARAMETER_VALUE(%s)),(%s,PARAMETER_VALUE(%s)),.T.,.PARAMETER.)",
		encode(l.Name), line, from, real(l.From), to, real(l.To))
}

// at returns the point of the line at a distance from that which it goes through.
func (l *Line) at(x float64) Vec {
	return Vec{l.Through[0] + x*l.Along[0], l.Through[1] + x*l.Along[1], l.Through[2] + x*l.Along[2]}
}

// square returns a direction of length 1 square to one of length 1.
func square(v Vec) Vec {
	least := 0
	for i := range v {
		if math.Abs(v[i]) < math.Abs(v[least]) {
			least = i
		}
	}
	var out Vec
	for i := range v {
		out[i] = -v[least] * v[i]
	}
	out[least]++
	length := math.Sqrt(out[0]*out[0] + out[1]*out[1] + out[2]*out[2])
	for i := range out {
		out[i] /= length
	}
	return out
}

// real returns a number as the format wants it: with a point, and no digit lost.
func real(x float64) string {
	text := strconv.FormatFloat(x+0, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += "."
	}
	return text
}

func reals(v Vec) string { return "(" + real(v[0]) + "," + real(v[1]) + "," + real(v[2]) + ")" }

// encode returns a text as ISO 10303-21 has it between quotes: other letters than those of
// ASCII by their numbers.
func encode(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '\'':
			b.WriteString("''")
		case r == '\\':
			b.WriteString(`\\`)
		case r < ' ':
			b.WriteByte(' ')
		case r > 0xFFFF:
			fmt.Fprintf(&b, `\X4\%08X\X0\`, r)
		case r > '~':
			fmt.Fprintf(&b, `\X2\%04X\X0\`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
