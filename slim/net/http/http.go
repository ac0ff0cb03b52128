// Package http takes the place of the standard net/http in the browser build
// only. The framework of the screens imports net/http for its server half,
// which no browser runs, and with it come TLS, certificates and HTTP/2. What
// the framework names is declared here, and nothing more, so a framework that
// begins to need more does not compile. A call that does something panics.
package http

import (
	"errors"
	"io"
	"net/url"
)

// Methods and states that the framework names.
const (
	MethodGet                 = "GET"
	StatusOK                  = 200
	StatusNotModified         = 304
	StatusNotFound            = 404
	StatusInternalServerError = 500
)

// Handler is as in the standard library.
type Handler interface {
	ServeHTTP(ResponseWriter, *Request)
}

// ResponseWriter is as in the standard library.
type ResponseWriter interface {
	Header() Header
	Write([]byte) (int, error)
	WriteHeader(statusCode int)
}

// Header has no values here.
type Header struct{}

// Get panics.
func (Header) Get(string) string { return missing() }

// Set panics.
func (Header) Set(string, string) { missing() }

// Request has the fields that the framework reads.
type Request struct {
	URL    *url.URL
	Header Header
	Host   string
	TLS    *struct{}
}

// Response has the fields that the framework reads.
type Response struct {
	StatusCode int
	Header     Header
	Body       io.ReadCloser
}

// Dir is as in the standard library.
type Dir string

// Client has no settings here.
type Client struct{}

// DefaultClient is never used in a browser.
var DefaultClient = &Client{}

// ErrAbsent is what every function of this package panics with.
var ErrAbsent = errors.New("this build for the browser leaves net/http out")

// Do panics.
func (*Client) Do(*Request) (*Response, error) { panic(ErrAbsent) }

// Get panics.
func Get(string) (*Response, error) { panic(ErrAbsent) }

// NewRequest panics.
func NewRequest(string, string, io.Reader) (*Request, error) { panic(ErrAbsent) }

// NotFound panics.
func NotFound(ResponseWriter, *Request) { panic(ErrAbsent) }

// FileServer gives a handler that panics. It must not panic itself: the
// framework may set one up that is never asked.
func FileServer(Dir) Handler { return absent{} }

type absent struct{}

// ServeHTTP panics.
func (absent) ServeHTTP(ResponseWriter, *Request) { panic(ErrAbsent) }

func missing() string { panic(ErrAbsent) }
