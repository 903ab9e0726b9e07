# check values for the items of the card: the formulae written out again, 40 digits, values of the methods read from values/*.toml
from mpmath import mp, mpf, matrix, eye as I2, cos, sin, pi, sqrt, atan2, inverse
from form import values
from sheet import Sheet
mp.dps = 40
def val(f,id): return mpf(values(f+'.toml')[id]['expect'])
card=Sheet('card.py',['mpmath'],'''Each kind of number on the card, from entries: `item` is its name, `method` and `row` say which where there are several;
# a row called `label N` is that of the label cylinder N. What the methods give is taken from the values of the methods,
# the rest is written out again from the formula named as source.''',vary='item method row')
def out(id,what,item,given,expect,unit,kind,mark,source,method=None,row=None,tol=None,note=None):
    g=[('item',item)]+([('method',method)] if method else [])+([('row',str(row))] if row is not None else [])+list(given)
    if not isinstance(expect,str):
        expect=mp.nstr(expect,12,strip_zeros=False); tol='1e-9'; note='far above double rounding'
    more={k:x for k,x in (('tolerance',tol),('note',note)) if x}
    card.add(id='card-'+id,what=what,given=dict(g),expect=expect,unit=unit,kind=kind,mark=mark,source=source,**more)
eye=[('axial_length_mm','23.50'),('k1_d','44.55'),('k1_axis_deg','90'),('k2_d','43.05'),('k2_axis_deg','180'),('acd_mm','3.20'),('a_constant','118.4')]
D=('derived','two')
ident='follows from the definitions'
out('mean-k','mean corneal power','mean_k_d',eye,'43.80000000','D',*D,ident)
out('mean-radius','radius of the mean power','mean_radius_mm',eye,mpf('337.5')/mpf('43.8'),'mm',*D,ident)
out('astigmatism','corneal astigmatism','corneal_astigmatism_d',eye,'1.50000000','D',*D,ident)
out('flat-k','power of the flat meridian','flat_k_d',eye,'43.05000000','D',*D,ident)
out('flat-axis','flat meridian','flat_axis_deg',eye,'x 180.0','deg',*D,ident)
out('steep-k','power of the steep meridian','steep_k_d',eye,'44.55000000','D',*D,ident)
out('steep-axis','steep meridian','steep_axis_deg',eye,'x 90.0','deg',*D,ident)
# methods
lens=eye+[('iol_power_d','20.00')]
ms=['srkt','t2','holladay1','hofferq']
src={m:'values of the method at 50 digits' for m in ms}
for m in ms+['haigis']:
    out('power-'+m,'exact power for the target','power_d',lens,val(m,m+'-01-p'),'D',*D,'values of the method at 50 digits',method=m)
    out('position-'+m,'lens position','lens_position_mm',lens,val(m,m+'-01-elp'),'mm',*D,'values of the method at 50 digits',method=m)
    out('refraction-'+m,'refraction with the lens chosen','refraction_d',lens,val(m,m+'-01-rx'),'D',*D,'values of the method at 50 digits',method=m)
out('power-srk2','exact power for the target, asked for','power_d',lens+[('show_srk2','yes')],val('srk2','srk2-01-p'),'D',*D,'values of the method at 50 digits',method='srk2')
# a toric label that states its weak meridian: half the cylinder on top, at SRK/T's own lens position
al,kc,d=(val('srkt','srkt-01-'+k) for k in ('al-used','kc','elp'))
X=1000*mpf('1.336')/(al-d)-(20+mpf(3)/2)
rc=1000*mpf('1.336')*X/(d*X+1000*mpf('1.336'))-kc
out('refraction-weak-meridian','refraction with the lens chosen, its label stating the weak meridian','refraction_d',lens+[('label_power','flattest_meridian'),('cylinder_plane','lens'),('iol_cylinder_d','3.00'),('iol_axis_deg','90'),('vertex_mm','12.0')],rc/(1+12*rc/1000),'D',*D,'thin-lens vergence, mean power = label + half the cylinder',method='srkt')
out('spread','spread of the exact powers compared','power_spread_d',lens,max(val(m,m+'-01-p') for m in ms)-min(val(m,m+'-01-p') for m in ms),'D',*D,'greatest less least of SRK/T, T2, Holladay 1, Hoffer Q')
out('ladder-power','label power nearest to the middle of the methods','ladder_power_d',lens,'20.00','D',*D,'nearest half dioptre',row=4)
out('ladder-power-next','label power, a step up','ladder_power_d',lens,'20.50','D',*D,'nearest half dioptre, and one more',row=5)
for m in ms: out('ladder-'+m,'refraction with that label','ladder_refraction_d',lens,val(m,m+'-01-rx'),'D',*D,'values of the method at 50 digits',method=m,row=4)
out('ladder-spread','spread of those refractions','ladder_spread_d',lens,max(val(m,m+'-01-rx') for m in ms)-min(val(m,m+'-01-rx') for m in ms),'D',*D,'greatest less least of SRK/T, T2, Holladay 1, Hoffer Q',row=4)
ng=('memory','memory','NICE guideline NG77, Cataracts in adults: management')
out('guided-srkt','whether guidance names the method at 23.50 mm','guided',lens,'1','1',*ng,method='srkt')
out('guided-hofferq','whether guidance names the method at 23.50 mm','guided',lens,'0','1',*ng,method='hofferq')
own=('regression','chosen here','defined in this project')
out('compared-srkt','whether the method counts in the spread','compared',lens,'1','1',*own,method='srkt')
out('compared-haigis','whether the method counts in the spread, unoptimised','compared',lens,'0','1',*own,method='haigis')
# vergence
n=mpf(1336)
def P(al,kc,d,rc=0): return n/(al-d)-n/(n/(kc+rc)-d)
t=dict(al=val('t2','t2-01-al-used'),kc=val('t2','t2-01-kc'),d=val('t2','t2-01-elp'))
b=eye+[('backup_model','spare'),('backup_a_constant','118.4'),('backup_style','three_piece'),('backup_place','sulcus'),('sulcus_shift_mm','0.75')]
bag=P(t['al'],t['kc'],t['d']); sul=P(t['al'],t['kc'],t['d']-mpf('0.75'))
vf='thin-lens vergence, n = 1.336, at T2\'s lens position and 0.75 mm before it'
out('backup-bag','backup lens in the bag','backup_bag_d',b,bag,'D',*D,vf,method='t2')
out('backup-sulcus','backup lens in the sulcus','backup_power_d',b,sul,'D',*D,vf,method='t2')
out('backup-step','sulcus less bag','backup_change_d',b,sul-bag,'D',*D,vf,method='t2')
# toric: cornea 1.50 at 90, incision 0.30 at 180 -> 1.80 at 90 (oblique one below)
def pm(S,C,A): # power matrix, plus/minus cylinder form, axis in degrees
    a=mpf(A)*pi/180
    return matrix([[S+C*sin(a)**2,-C*sin(a)*cos(a)],[-C*sin(a)*cos(a),S+C*cos(a)**2]])
def strong(mean,diff,mer): # mean power, difference, strongest along mer
    return pm(mean+diff/2,-diff,mer)
def parts(M): # cylinder, strongest meridian
    j0=(M[0,0]-M[1,1])/2; j45=M[0,1]
    return 2*sqrt(j0**2+j45**2), (atan2(j45,j0)/2*180/pi)%180
site,fl=mpf(150),mpf('0.30')
inc=[('incision_site_deg','150'),('incision_flattening_d','0.30')]
k=strong(0,mpf('1.5'),90)+strong(0,fl,site+90)
N,a=parts(k)
te=eye+inc
out('planned','astigmatism after an incision at 150','planned_astigmatism_d',te,N,'D',*D,'sum of the 2x2 power matrices')
out('planned-axis','steep meridian after it','planned_axis_deg',te,a,'deg',*D,'sum of the 2x2 power matrices')
def v(k): return k/(1-t['d']*k/n)
need=v(t['kc']+N/2)-v(t['kc']-N/2)
tl=te+[('iol_power_d','20.00'),('label_power','spherical_equivalent'),('cylinder_plane','lens'),('cylinder_1_d','1.50'),('cylinder_2_d','2.25'),('cylinder_3_d','3.00')]
out('needed','lens cylinder needed','needed_cylinder_d',tl,need,'D',*D,'v = k/(1 - (d/n) k) in both principal meridians, n = 1.336',method='t2')
out('ratio','lens over corneal cylinder','cylinder_ratio',tl,need/N,'1',*D,'v = k/(1 - (d/n) k) in both principal meridians, n = 1.336',method='t2')
out('mark','meridian for the mark: the flat one of the lens on the steep one of the cornea','mark_axis_deg',tl,a,'deg',*D,'sum of the 2x2 power matrices')
def left(mean,C,mark): # correction still needed at the cornea
    L=strong(mean,C,mpf(mark)+90)   # weakest along the mark
    X=matrix([[1,0],[0,1]])*(n/(t['al']-t['d']))-L
    R=X*inverse(matrix([[1,0],[0,1]])+X*(t['d']/n))
    return R-(strong(t['kc'],N,a))
sm='2x2 power matrices and their inverses, n = 1.336, at T2\'s lens position'
for off,item in ((0,'residual_d'),(5,'residual_5_d'),(10,'residual_10_d')):
    c,ax=parts(left(mpf(20),mpf('2.25'),a+off))
    out('residual-%d'%off,'cylinder left by the label of 2.25 D, %d deg off'%off,item,tl,c,'D',*D,sm,method='t2',row='label 2.25')
# plus cylinder: its axis is the meridian of least power, across the strongest; shown from an eighth of a dioptre up
c,ax=parts(left(mpf(20),mpf('3.00'),a))
out('residual-axis','axis of the plus cylinder still needed','residual_axis_deg',tl,(ax+90)%180,'deg',*D,sm,method='t2',row='label 3.00')
out('label','label cylinder','label_cylinder_d',tl,'2.25','D',*D,'as entered',row='label 2.25')
tc=[kv for kv in tl if kv[0]!='cylinder_plane']+[('cylinder_plane','cornea')]
own_=v(t['kc']+mpf('2.25')/2)-v(t['kc']-mpf('2.25')/2)
out('label-cornea','label cylinder meant at the cornea, at the lens','lens_plane_cylinder_d',tc,own_,'D',*D,'v = k/(1 - (d/n) k) in both principal meridians, n = 1.336',method='t2',row='label 2.25')
tf=[kv for kv in tl if kv[0]!='label_power']+[('label_power','flattest_meridian'),('iol_cylinder_d','2.25'),('iol_axis_deg','75')]
c,ax=parts(left(mpf(20)+mpf('2.25')/2,mpf('2.25'),75))
out('chosen','cylinder left by the lens chosen, mark at 75, label of the flattest meridian','chosen_residual_d',tf,c,'D',*D,sm,method='t2')
out('chosen-axis','axis of the plus cylinder still needed','chosen_residual_axis_deg',tf,(ax+90)%180,'deg',*D,sm,method='t2')
# wound, rhexis
out('squareness','tunnel length over width of a wound that leaked','tunnel_squareness',[('tunnel_length_mm','2.00'),('incision_width_mm','3.20')],'0.625','1',*D,'the 3.2 by 2.0 mm wound of J Cataract Refract Surg 1994;20:626-629')
rx=[('rhexis_cut_mm','2.50'),('grasp_mm','1.00'),('optic_mm','6.00'),('rhexis_decentration_mm','0.38'),('capsule_depth_mm','3.28')]
cp=('common-practice','common practice','no source')
out('rhexis','circle from a straight first cut','rhexis_true_mm',rx,'5.0','mm',*cp)
out('rhexis-edge','its edge','rhexis_edge_mm',rx,'15.7','mm',*D,'pi D')
out('rhexis-grasps','grasps at 1 mm each','rhexis_grasps',rx,'16','1',*cp)
me=('derived','two','measured in 40 eyes: 115.9 % (110 to 120), divided')
for id,item,e in (('cut-seen','cut_seen_as_mm','2.157'),('seen','rhexis_seen_mm','4.314'),('seen-least','rhexis_seen_least_mm','4.167'),('seen-most','rhexis_seen_most_mm','4.545')):
    out('rhexis-'+id,'a cut that looks 2.5 mm through the cornea',item,rx,e,'mm',*me)
for id,item,e in (('worst','overlap_worst_mm','0.120'),('best','overlap_best_mm','0.880'),('worst-seen','overlap_worst_seen_mm','0.463'),('best-seen','overlap_best_seen_mm','1.223')):
    out('overlap-'+id,'cover of a 6.0 mm optic, 0.38 mm off centre',item,rx,e,'mm',*D,'(O - D)/2 -/+ e')
out('paraxial','apparent over true diameter, paraxial','paraxial_magnification',rx,'1.12','1',*D,'1/(1 - d K/1336)')
# pressure
hd=[('open_level_cm','160.0'),('eye_level_cm','85.0')]
mm=mpf('133.322387415'); g=mpf('9.80665')
h=1000*g*mpf('0.75')
hs='rho g h, rho 1000 kg/m3, g 9.80665 m/s2'
out('head','75 cm of column','head_mmhg',hd,h/mm,'mmHg',*D,hs)
out('head-kpa','75 cm of column','head_kpa',hd,h/1000,'kPa',*D,hs)
out('head-cmh2o','75 cm of column','head_cmh2o',hd,h/mpf('98.0665'),'cmH2O',*D,hs)
out('head-per-cm','1 cm of column','head_per_cm_mmhg',hd,10*g/mm,'mmHg',*D,hs)
air=[('altitude_m','1609')]
pa=val('atmosphere','atmosphere-1609'); ps=val('water','if97-psat-20')
us='US Standard Atmosphere 1976 less IAPWS-IF97 region 4, written out at 50 digits'
out('air','pressure of the air','air_pressure_mmhg',air,pa/mm,'mmHg',*D,us)
out('vapour','pressure at which the fluid boils, 20 C','vapour_pressure_mmhg',air,ps/mm,'mmHg',*D,us)
out('ceiling','ceiling on vacuum','vacuum_ceiling_mmhg',air,(pa-ps)/mm,'mmHg',*D,us)
out('ceiling-kpa','ceiling on vacuum','vacuum_ceiling_kpa',air,(pa-ps)/1000,'kPa',*D,us)
out('station-air','pressure of the air, measured','station_air_mmhg',[('station_pressure_hpa','834.0')],mpf(83400)/mm,'mmHg',*D,us)
for m,v in [('nucleus','500'),('cortex','450'),('viscoelastic','600')]:
    out('margin-'+m,'margin below the ceiling',m+'_margin_mmhg',air+[('vacuum_%s_mmhg'%m,v)],(pa-ps)/mm-int(v),'mmHg',*D,us)
out('visco-kpa','500 mmHg of vacuum','viscoelastic_kpa',[('vacuum_viscoelastic_mmhg','500')],'66.661','kPa','published','two','NIST SP 811 (2008) App. B, as reproduced in independent unit libraries')
out('visco-cmh2o','500 mmHg of vacuum','viscoelastic_cmh2o',[('vacuum_viscoelastic_mmhg','500')],'679.755','cmH2O','derived','two','NIST SP 811 (2008) App. B values, divided')
out('orientation','meridian of the lens at the end','orientation_deg',[('haptic_axis_deg','10')],'x 10','deg',*D,'as entered')
card.save('card.toml')
