// Package drawing composes the pictures beside the instructions: stator face,
// plug, leads, probes and meter, from the user's own build and the check. It is
// pure: a Picture is a list of shapes whose colours are class names, so that
// one style sheet serves light and dark and no style is written inline.
package drawing

import "coilbook/engine/check"

// Point is a place in a picture: x to the right, y down.
type Point struct{ X, Y float64 }

// Picture is a finished drawing with its text alternative. Anchors are the
// places that probes touch, in the picture's own coordinates.
type Picture struct {
	Width, Height float64
	Label         string
	Shapes        []Shape
	Anchors       map[check.Terminal]Point
}

// Shape is one of Path, Circle, Rect, Text and Group.
type Shape interface{ shape() }

// Path is a line or an outline. Width is the stroke width; zero for a shape
// that is only filled.
type Path struct {
	Class string
	Width float64
	Steps []Step
}

// Circle is a disc or a ring.
type Circle struct {
	Class  string
	Center Point
	R      float64
	Width  float64
}

// Rect is an upright rectangle with corner radius R.
type Rect struct {
	Class      string
	X, Y, W, H float64
	R          float64
	Width      float64
}

// Text is one line of words; At is on its base line.
type Text struct {
	Class  string
	At     Point
	Size   float64
	Anchor Anchor
	Text   string
}

// Group holds shapes that are scaled, then turned, then moved together.
type Group struct {
	Move   Point
	Turn   float64 // degrees, clockwise
	Scale  float64 // zero means one
	Shapes []Shape
}

func (Path) shape()   {}
func (Circle) shape() {}
func (Rect) shape()   {}
func (Text) shape()   {}
func (Group) shape()  {}

// Anchor says which part of a text stands at its point. The value is that of
// the text-anchor attribute.
type Anchor string

// Anchors of a text.
const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// Words are the few words that are drawn or said in a text alternative, in the
// user's language (package words has them). A word without room is cut with an ellipsis.
type Words struct {
	Red    string // on the handle of the red probe
	Black  string // on the handle of the black probe
	Core   string // where the black probe touches the stator: bare metal
	Case   string // the same when the flywheel is on: bare engine metal
	Apart  string // the plug is apart
	Joined string // the plug is together
	Turns  string // the starter turns the engine
	Gap    string // the air gap at the pickup
	Leaf   string // the feeler leaf
	Pickup string // the pickup itself

	Battery  string // on the battery
	Fuse     string // beside the fuse
	Bulb     string // beside the bulb that sets the current
	Resistor string // the resistor whose value is known
	Series   string // said only: battery, fuse, bulb, resistor and winding in one ring
	Inside   string // said only: the probes are nearer to the winding than the clips
	Swapped  string // said only: the probes are the wrong way round on purpose
	Hot      string // the winding is hot
	Adapter  string // the peak-hold adapter between probes and meter
	Box      string // the ignition box
	Coil     string // the ignition coil

	Idles, At3000, At5000 string // what an engine does that runs by itself
	KeyOn                 string // the key is on
	Lamp                  string // the lamp is on
	NeverCrank            string // the meter is in series: what must not be done
	Regulator             string // the regulator-rectifier
	Unplugged             string // all of its plugs are apart
	SparkPlug             string // the machine's own spark plug
	GoodPlug              string // a spark plug that is known to be good
	BareLead              string // the spark lead without its cap
	Cap                   string // the plug cap
	KillOff               string // the kill wire is taken off
	Eyes                  string // nothing is measured
	Yes, No               string // beside what would be a yes, and a no
}
