package study

import (
	"embed"
	"slices"
)

// Template is an invented car to start from: one for each pair of suspension and
// steering gear that exists in the trade.
type Template struct {
	Key     string // Key is short and stable, such as "strut-rack".
	Title   string // Title names the suspension and the gear.
	Typical string // Typical says in a sentence what is typical of the pair.
}

//go:embed templates/*.json
var templateFiles embed.FS

// templates are in the order in which a list shows them.
var templates = []Template{
	{
		"double-wishbone-centre-link", "Double wishbone, steering box and centre link",
		"Long tie rods on a centre link behind the axle, as most cars of the 1950s to 1970s had: the balls of the arms stand too high as soon as spindles, ball joints or ride height are changed, and a taller arm brings them down.",
	},
	{
		"double-wishbone-rack", "Double wishbone, rack behind the axle",
		"Tie rods about as long as the lower arms; the rack's length and height and the height of the arm's ball must all suit the arms, and spacers at the ball are the usual cure.",
	},
	{
		"double-wishbone-rack-front-steer", "Double wishbone, rack ahead of the axle",
		"Racing cars and many front-engined ones: with the arm ahead of the axle a ball that stands too low toes the wheel out in bump, where behind the axle one that stands too high does.",
	},
	{
		"double-wishbone-rear", "Double wishbone, rear, fixed toe link",
		"The toe link takes the tie rod's place and nothing steers it; a little toe-in in bump is wanted, so its target is a slope.",
	},
	{
		"strut-rack", "Strut, rack behind the axle",
		"The wheel swings about the top mount far above it, so the tie rod wants to be about as long as the lower arm, and longer where it sits high on the strut.",
	},
	{
		"strut-centre-link", "Strut, steering box and centre link",
		"The steering arm is bolted below the strut, so a spacer between the two lowers ball joint and arm together.",
	},
	{
		"strut-rear", "Strut, rear, fixed toe link",
		"A toe link shorter than the lower arm bends the curve the same way in bump and droop; only length corrects that, not height.",
	},
	{
		"multi-link-rack", "Multi-link, rack behind the axle",
		"The wheel steers about an axis where no joint is, so caster and kingpin inclination are those of the motion itself and differ a little with travel.",
	},
	{
		"multi-link-rear", "Multi-link, rear, fixed toe link",
		"Toe is set by an eccentric at the toe link's inner end, whose height is the handiest cure of its curve.",
	},
	{
		"swing-arm-rack", "Swing arm, rack: split beams",
		"The wheel rises on a circle about the beam's own axis, and leans with it; a tie rod whose inner ball stands on that axis changes toe least.",
	},
	{
		"swing-arm-centre-link", "Swing arm, steering box and centre link: leading arms",
		"Seen from the side the arm swings up and back while the tie rod's ball keeps near its plane, so that caster changes much and toe follows the height of the ball.",
	},
	{
		"solid-axle-pitman", "Solid axle, steering box and drag link",
		"The tie rod moves with the axle and does no harm; it is the drag link, if it does not match the panhard rod, that steers both wheels in bump.",
	},
	{
		"solid-axle-rack", "Solid axle, rack and drag link",
		"As with a steering box, but the drag link's inner ball moves straight across the car.",
	},
}

// Templates lists all templates.
func Templates() []Template { return slices.Clone(templates) }

// Text returns the template's study file. It panics for a template that is not
// one of [Templates].
func (t Template) Text() []byte {
	text, err := templateFiles.ReadFile("templates/" + t.Key + ".json")
	if err != nil {
		panic("study: no such template: " + t.Key)
	}
	return text
}

// Document returns a fresh copy of the template's study.
func (t Template) Document() *Document {
	d, err := Decode(t.Text())
	if err != nil {
		panic("study: template " + t.Key + ": " + err.Error()) // ruled out by a test
	}
	return d
}
