//go:build ignore

// Draws the icons of the app: the face of a stator, copper coils on poles.
package main

import (
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"log"
	"math"
	"os"
	"path/filepath"
	"strings"
)

var (
	ink    = color.RGBA{0x1b, 0x19, 0x16, 0xff}
	paper  = color.RGBA{0xf7, 0xf3, 0xea, 0xff}
	copper = color.RGBA{0xd0, 0x79, 0x3c, 0xff}
)

// shape is a rectangle with rounded corners, turned about the centre of the
// picture. All lengths are shares of the picture's side.
type shape struct {
	x, y, w, h, r float64 // centre, half sides, corner radius
	turn          float64 // degrees
	fill          color.RGBA
}

// picture lists the shapes from back to front; corner rounds the background.
func picture(corner float64) []shape {
	list := []shape{{0, 0, 0.5, 0.5, corner, 0, ink}}
	for turn := 0.0; turn < 360; turn += 60 {
		list = append(list, pole(turn)...)
	}
	return append(list,
		shape{0, 0, 0.13, 0.13, 0.13, 0, paper},
		shape{0, 0, 0.065, 0.065, 0.065, 0, ink})
}

func pole(turn float64) []shape {
	list := []shape{
		{0, -0.22, 0.034, 0.13, 0, turn, paper},
		{0, -0.354, 0.112, 0.024, 0.016, turn, paper},
	}
	for i := range 4 {
		y := -0.178 - 0.041*float64(i)
		list = append(list, shape{0, y, 0.078 + 0.006*float64(i), 0.016, 0.016, turn, copper})
	}
	return list
}

// covers tells whether the point lies inside.
func (s shape) covers(x, y float64) bool {
	sin, cos := math.Sincos(-s.turn * math.Pi / 180)
	x, y = x*cos-y*sin, x*sin+y*cos
	dx := math.Max(math.Abs(x-s.x)-(s.w-s.r), 0)
	dy := math.Max(math.Abs(y-s.y)-(s.h-s.r), 0)
	return dx*dx+dy*dy <= s.r*s.r
}

const samples = 6 // per side of a pixel

func raster(shapes []shape, side int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, side, side))
	for py := range side {
		for px := range side {
			img.SetRGBA(px, py, pixel(shapes, px, py, side))
		}
	}
	return img
}

// pixel is the mean of its samples, in premultiplied colour.
func pixel(shapes []shape, px, py, side int) color.RGBA {
	var r, g, b, a int
	for i := range samples * samples {
		x := (float64(px)+(float64(i%samples)+0.5)/samples)/float64(side) - 0.5
		y := (float64(py)+(float64(i/samples)+0.5)/samples)/float64(side) - 0.5
		c := at(shapes, x, y)
		r, g, b, a = r+int(c.R), g+int(c.G), b+int(c.B), a+int(c.A)
	}
	n := samples * samples
	return color.RGBA{uint8(r / n), uint8(g / n), uint8(b / n), uint8(a / n)}
}

// fewColours gives the picture with a list of its colours, a third of the bytes;
// beyond what a list holds, the least significant bits are given up.
func fewColours(img image.Image) image.Image {
	for drop := 0; ; drop++ {
		small := image.NewPaletted(img.Bounds(), nil)
		places := map[color.RGBA]uint8{}
		for i := range small.Pix {
			x, y := i%small.Stride, i/small.Stride
			c := rounded(img.At(x, y).(color.RGBA), drop)
			if _, known := places[c]; !known {
				places[c] = uint8(len(small.Palette))
				small.Palette = append(small.Palette, c)
			}
			small.Pix[i] = places[c]
		}
		if len(small.Palette) <= 128 {
			return small
		}
	}
}

// rounded keeps the plain colours exactly, and 8-drop bits of each part of the
// others.
func rounded(c color.RGBA, drop int) color.RGBA {
	if c == ink || c == paper || c == copper || c.A == 0 {
		return c
	}
	cut := func(v uint8) uint8 { return v >> drop << drop }
	c.A = 255 - cut(255-c.A)
	return color.RGBA{min(cut(c.R), c.A), min(cut(c.G), c.A), min(cut(c.B), c.A), c.A}
}

func at(shapes []shape, x, y float64) color.RGBA {
	for i := len(shapes) - 1; i >= 0; i-- {
		if shapes[i].covers(x, y) {
			return shapes[i].fill
		}
	}
	return color.RGBA{}
}

func svg(shapes []shape) string {
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="-500 -500 1000 1000">` + "\n")
	for _, s := range shapes {
		fmt.Fprintf(&b, `<rect x="%.0f" y="%.0f" width="%.0f" height="%.0f" rx="%.0f" fill="#%02x%02x%02x"`,
			1000*(s.x-s.w), 1000*(s.y-s.h), 2000*s.w, 2000*s.h, 1000*s.r, s.fill.R, s.fill.G, s.fill.B)
		if s.turn != 0 {
			fmt.Fprintf(&b, ` transform="rotate(%.0f)"`, s.turn)
		}
		b.WriteString("/>\n")
	}
	b.WriteString("</svg>\n")
	return b.String()
}

func write(path string, shapes []shape, side int) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer f.Close()
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(f, fewColours(raster(shapes, side))); err != nil {
		return err
	}
	return f.Close()
}

func main() {
	dir := flag.String("dir", ".", "where the icons go")
	flag.Parse()
	for _, icon := range []struct {
		name   string
		corner float64
		side   int
	}{
		{"icon-192.png", 0.2, 192},
		{"icon-512.png", 0.2, 512},
		{"icon-maskable-512.png", 0, 512},
		{"apple-touch-icon.png", 0, 180},
	} {
		if err := write(filepath.Join(*dir, icon.name), picture(icon.corner), icon.side); err != nil {
			log.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(*dir, "icon.svg"), []byte(svg(picture(0.2))), 0o644); err != nil {
		log.Fatal(err)
	}
}
