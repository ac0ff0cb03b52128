package assess_test
import ("testing";"coilbook/engine/check";"coilbook/engine/session")
func TestProbe(t *testing.T){
 for _,m:=range []string{"cheap","auto6000"} { for _,k:=range []float64{0,0.1,0.47,1,2.2}{ for _,id:=range []check.ID{"exciter-peak","pickup-peak","box-peak"} { for _,x:=range []string{"50","75","100","200","300"} {
  e:=setup(check.DefaultBuild()); e.Setup.Meter=m; e.Setup.Methods=[]check.Method{check.PeakHold}
  if k>0 { e.Setup.Kit=&session.Kit{AdapterMicrofarads:k} }
  b:=opened(t,e,session.Entry{Reading:&session.Reading{Check:id,Text:x,Unit:"V"}})
  l:=line(t,b,id)
  p:=l.Peak
  t.Logf("%s %v %s %s: %+v -> %v %v %.1f",m,k,id,x,p,l.Verdict.Outcome,l.Verdict.Reason,l.Verdict.Value)
 }}}}
}
