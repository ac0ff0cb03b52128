//go:build !js

package main

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

var makePictures = flag.Bool("pictures", false, "take the pictures of the README anew")

// What a picture of the README may weigh, how wide it is against the screen's own
// pixels, and how many colours it keeps.
const (
	pictureBytes   = 60_000
	pictureScale   = 0.7
	pictureColours = 64
)

// pictures are those of the README: a scene of the gallery, and what of it is at the
// top; "" is the screen as it opens.
var pictures = []struct{ name, scene, top string }{
	{"colours", "check-colours", ""},
	{"suspects", "find-output", ""},
	{"output", "result-output", "#output"},
	{"result", "result-bad", ""},
	{"truth", "practice-truth", "#curves"},
	{"earlier", "earlier", "#trend-exciter-cranking"},
}

func picturePath(name, theme string) string {
	return filepath.Join("..", "docs", "pictures", name+"-"+theme+".png")
}

// TestPictures holds the README to its pictures: each is there in both looks, small, and
// said in words. With -pictures it takes them anew.
func TestPictures(t *testing.T) {
	if *makePictures {
		takePictures(t)
	}
	text, err := os.ReadFile(filepath.Join("..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	shown := regexp.MustCompile(`<img src="(docs/pictures/[^"]+)" alt="([^"]*)"`).FindAllSubmatch(text, -1)
	if len(shown) < 4 || len(shown) > 6 {
		t.Errorf("the README shows %d pictures", len(shown))
	}
	for _, m := range shown {
		if len(m[2]) < 20 {
			t.Errorf("%s is not said in words: %q", m[1], m[2])
		}
	}
	for _, p := range pictures {
		for _, theme := range themes {
			name := filepath.ToSlash(picturePath(p.name, theme))[len("../"):]
			if !bytes.Contains(text, []byte(`"`+name+`"`)) {
				t.Errorf("the README does not show %s", name)
			}
			data, err := os.ReadFile(picturePath(p.name, theme))
			if err != nil {
				t.Error(err)
				continue
			}
			if _, err := png.Decode(bytes.NewReader(data)); err != nil || len(data) > pictureBytes {
				t.Errorf("%s has %d bytes, at most %d (%v)", name, len(data), pictureBytes, err)
			}
		}
	}
}

func takePictures(t *testing.T) {
	b, all := atGallery(t)
	for _, p := range pictures {
		for _, theme := range themes {
			b.size(phoneWidth, phoneHeight)
			b.show(all, p.scene)
			b.look(theme)
			if p.top != "" {
				b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void document.querySelector(%q).scrollIntoView({ block: "start" })`, p.top)))
			}
			b.pause()
			shot := call(b, page.CaptureScreenshot, page.CaptureScreenshotParams{})
			small, err := smaller(shot.Data)
			if err == nil {
				err = os.MkdirAll(filepath.Dir(picturePath(p.name, theme)), 0o755)
			}
			if err == nil {
				err = os.WriteFile(picturePath(p.name, theme), small, 0o644)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
	}
}

// pause waits until what was shown is painted.
func (b *browser) pause() {
	b.waitFor(`await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))`)
}

// smaller scales a picture down and keeps its commonest colours.
func smaller(data []byte) ([]byte, error) {
	full, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	scaled := scaledDown(full)
	count := map[color.RGBA]int{}
	for i := 0; i < len(scaled.Pix); i += 4 {
		p := scaled.Pix[i:]
		count[color.RGBA{p[0] | 3, p[1] | 3, p[2] | 3, 255}]++
	}
	var common []color.RGBA
	for c := range count {
		common = append(common, c)
	}
	slices.SortFunc(common, func(a, b color.RGBA) int {
		if count[a] != count[b] {
			return count[b] - count[a]
		}
		return (int(a.R)<<16 | int(a.G)<<8 | int(a.B)) - (int(b.R)<<16 | int(b.G)<<8 | int(b.B))
	})
	var palette color.Palette
	for _, c := range common[:min(len(common), pictureColours)] {
		palette = append(palette, c)
	}
	out := image.NewPaletted(scaled.Bounds(), palette)
	nearest := map[color.RGBA]uint8{}
	for y := range scaled.Rect.Dy() {
		for x := range scaled.Rect.Dx() {
			c := scaled.RGBAAt(x, y)
			i, known := nearest[c]
			if !known {
				i = uint8(palette.Index(c))
				nearest[c] = i
			}
			out.SetColorIndex(x, y, i)
		}
	}
	var packed bytes.Buffer
	err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&packed, out)
	return packed.Bytes(), err
}

// scaledDown takes for each pixel the mean of those that it covers.
func scaledDown(full image.Image) *image.RGBA {
	from := full.Bounds()
	w, h := int(float64(from.Dx())*pictureScale), int(float64(from.Dy())*pictureScale)
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	span := func(i int) (first, last float64) { return float64(i) / pictureScale, float64(i+1) / pictureScale }
	for y := range h {
		top, bottom := span(y)
		for x := range w {
			left, right := span(x)
			var sum [3]float64
			weights := 0.0
			for j := int(top); float64(j) < bottom && j < from.Dy(); j++ {
				tall := min(float64(j+1), bottom) - max(float64(j), top)
				for i := int(left); float64(i) < right && i < from.Dx(); i++ {
					weight := tall * (min(float64(i+1), right) - max(float64(i), left))
					r, g, b, _ := full.At(from.Min.X+i, from.Min.Y+j).RGBA()
					sum[0], sum[1], sum[2], weights = sum[0]+weight*float64(r>>8), sum[1]+weight*float64(g>>8), sum[2]+weight*float64(b>>8), weights+weight
				}
			}
			out.SetRGBA(x, y, color.RGBA{uint8(sum[0]/weights + 0.5), uint8(sum[1]/weights + 0.5), uint8(sum[2]/weights + 0.5), 255})
		}
	}
	return out
}
