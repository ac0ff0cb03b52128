package transient

// frame is all that changes, at one time. The parts are cut from one slab so that
// two frames can be mixed in one go.
type frame struct {
	slab  []float64
	v     []float64 // node voltages, each island's ground after its nodes
	amps  []float64 // of windings
	rest  []float64 // emf less voltage, of windings
	cv    []float64 // of capacitors, a over b
	camps []float64
	pamps []float64 // of coupled coils, two by two
	pv    []float64
}

func (n *net) newFrame() *frame {
	w, c, p := len(n.windings), len(n.capacitors), 2*len(n.pairs)
	slab := make([]float64, n.volts+2*w+2*c+2*p)
	f := &frame{slab: slab}
	for _, part := range []struct {
		to   *[]float64
		size int
	}{{&f.v, n.volts}, {&f.amps, w}, {&f.rest, w}, {&f.cv, c}, {&f.camps, c}, {&f.pamps, p}, {&f.pv, p}} {
		*part.to = slab[:part.size:part.size]
		slab = slab[part.size:]
	}
	return f
}

// mix sets f between two frames, f possibly one of them.
func (f *frame) mix(from, to *frame, share float64) {
	for i, x := range from.slab {
		f.slab[i] = x + share*(to.slab[i]-x)
	}
}

// mixBent is mix with a bow.
func (f *frame) mixBent(from, to, bow *frame, share float64) {
	bend := share * (1 - share)
	for i, x := range from.slab {
		f.slab[i] = x + share*(to.slab[i]-x) + bend*bow.slab[i]
	}
}
