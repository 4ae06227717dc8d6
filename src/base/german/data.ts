/** Names and sentences of data files, by their English text. */
export const DATA: Readonly<Record<string, string>> = {
  "Read the label and the safety data sheet of what you use; follow local law, your workshop's rules and, where one is needed, a trained or licensed person.":
    'Etikett und Sicherheitsdatenblatt dessen lesen, was verwendet wird; örtliches Recht, die Regeln der Werkstatt und, wo nötig, geschulte oder zugelassene Personen beachten.',
  Knife: 'Messer',
  'Fresh blade, several light passes, cut away from the hand that holds the foam, and draw the blade in when you put the knife down.':
    'Frische Klinge, mehrere leichte Züge, von der haltenden Hand weg schneiden und die Klinge einziehen, wenn das Messer weggelegt wird.',
  Machines: 'Maschinen',
  'Bandsaw, sander and rotary tool only if you were shown how: guards on, eyes covered, no gloves, loose sleeves or hair near what turns.':
    'Bandsäge, Schleifer und Drehwerkzeug nur nach Einweisung: Schutz angebaut, Augen geschützt, keine Handschuhe, losen Ärmel oder Haare nahe an dem, was sich dreht.',
  Dust: 'Staub',
  'Sanded foam makes fine, clinging dust: particle respirator (N95, FFP2 or better), eye protection and extraction. A dust mask does not hold back solvent vapour.':
    'Geschliffener Schaumstoff gibt feinen, haftenden Staub: Partikelmaske (N95, FFP2 oder besser), Augenschutz und Absaugung. Eine Staubmaske hält Lösemitteldampf nicht zurück.',
  'Contact adhesive': 'Kontaktkleber',
  'Gives off vapour that burns and harms. Outdoors or in a through-draught; no flame, pilot light, heater, hot-air gun or spark until the smell has gone. Gloves, and a respirator rated for vapour where the air stands.':
    'Gibt Dampf ab, der brennt und schadet. Im Freien oder bei Durchzug; keine Flamme, Zündflamme, Heizung, Heißluftpistole und kein Funke, bis der Geruch fort ist. Handschuhe, und bei stehender Luft eine Maske, die für Dampf zugelassen ist.',
  Superglue: 'Sekundenkleber',
  'Bonds skin and eyelids at once and heats up on cotton: eye protection, fresh air. If something is stuck, do not pull; with eyes or lips, get medical help.':
    'Verklebt Haut und Augenlider sofort und wird auf Baumwolle heiß: Augenschutz, frische Luft. Klebt etwas fest, nicht ziehen; bei Augen oder Lippen ärztliche Hilfe holen.',
  'Glue before heat': 'Kleber vor Wärme',
  'Never heat a piece while its adhesive or paint still gives off vapour.':
    'Nie ein Stück erwärmen, solange sein Kleber oder seine Farbe noch Dampf abgibt.',
  'Hot-air gun': 'Heißluftpistole',
  'It is hotter than the foam needs. Keep it moving, air the room, stop if the foam smokes or smells sharp, and park the gun nozzle up on something that cannot burn.':
    'Sie ist heißer, als der Schaumstoff braucht. In Bewegung halten, lüften, aufhören, wenn der Schaumstoff raucht oder stechend riecht, und die Pistole mit der Düse nach oben auf etwas Unbrennbarem abstellen.',
  'PVC and vinyl': 'PVC und Vinyl',
  'Neither heat nor laser PVC or foam faced with vinyl: it can give off corrosive hydrogen chloride. If you do not know what the sheet is made of, do neither.':
    'PVC und mit Vinyl beschichteten Schaumstoff weder erwärmen noch lasern: Es kann ätzender Chlorwasserstoff entstehen. Ist unbekannt, woraus die Platte ist, keines von beidem.',
  Laser: 'Laser',
  'Ask whoever runs the laser before you cut any foam, run the extraction, and never leave it cutting alone.':
    'Vor dem Schneiden von Schaumstoff fragen, wer den Laser betreibt, die Absaugung laufen lassen und ihn nie allein schneiden lassen.',
  'Spray paint': 'Sprühfarbe',
  'Outdoors or in a proper booth, with a respirator for vapour and particles, away from any flame; let the piece air before it is worn.':
    'Im Freien oder in einer richtigen Kabine, mit einer Maske gegen Dampf und Partikel, fern von jeder Flamme; das Stück vor dem Tragen auslüften lassen.',
  'Button cells': 'Knopfzellen',
  'A swallowed button cell can kill a child within hours: a way in that needs a tool, spare and spent cells out of reach, and at once to an emergency ward if one may be swallowed.':
    'Eine verschluckte Knopfzelle kann ein Kind binnen Stunden töten: ein Fach, das nur mit Werkzeug aufgeht, neue und leere Zellen außer Reichweite, und sofort in die Notaufnahme, wenn eine verschluckt sein könnte.',
  'Lithium cells': 'Lithiumzellen',
  'Crushed, pierced, shorted or overcharged ones burn. Protected cells and their own charger only, taken out to charge, kept from knocks and from anything sharp; a swollen one goes to where batteries are taken back.':
    'Gequetscht, durchstochen, kurzgeschlossen oder überladen brennen sie. Nur geschützte Zellen mit eigenem Ladegerät, zum Laden herausgenommen, vor Stößen und allem Scharfen bewahrt; eine geblähte gehört in die Batterierücknahme.',
  'Lamps in foam': 'Lampen im Schaumstoff',
  'Foam keeps heat in and softens at about the heat of hot tea. Low-voltage lamps only, run an hour in their pocket before it is closed: what you cannot hold in your hand stays out of the foam. A fuse beside the battery.':
    'Schaumstoff hält Wärme fest und wird etwa bei der Hitze von heißem Tee weich. Nur Kleinspannungslampen, eine Stunde in ihrer Tasche betrieben, bevor sie geschlossen wird: Was sich nicht in der Hand halten lässt, bleibt aus dem Schaumstoff. Eine Sicherung neben die Batterie.',
  Magnets: 'Magnete',
  "Two swallowed magnets pinch the bowel and can kill: glue each in and cover it, none where a child may pick at it. Keep them from pacemakers and other implants by a hand's length and more, and ask who wears one.":
    'Zwei verschluckte Magnete klemmen den Darm ab und können töten: jeden einkleben und abdecken, keinen, wo ein Kind daran zupfen kann. Eine Handlänge und mehr von Herzschrittmachern und anderen Implantaten fernhalten und fragen, wer eines trägt.',
  'Clear sheet': 'Klare Platte',
  'Put it in after all heat work: it bends and clouds under the hot-air gun, and many kinds must not be heated or lasered at all. Smooth its edges; before an eye it is no safety glass.':
    'Nach aller Arbeit mit Wärme einsetzen: Unter der Heißluftpistole verbiegt sie sich und wird trüb, und viele Arten dürfen gar nicht erwärmt oder gelasert werden. Ihre Kanten glätten; vor einem Auge ist sie kein Sicherheitsglas.',
  'Before you wear it': 'Vor dem Tragen',
  'Try sight, breath, heat and a quick way out of it first, and ask the event for its own rules on props.':
    'Zuerst Sicht, Atem, Wärme und einen schnellen Ausstieg ausprobieren und bei der Veranstaltung nach ihren Regeln für Requisiten fragen.',

  'contact adhesive, solvent': 'Kontaktkleber, lösemittelhaltig',
  'contact adhesive, water-borne': 'Kontaktkleber, wasserbasiert',
  'contact adhesive, spray grade': 'Kontaktkleber, zum Sprühen',
  'flexible sealer, water-borne': 'flexible Versiegelung, wasserbasiert',
  'acrylic paint, water-borne, brushed': 'Acrylfarbe, wasserbasiert, gestrichen',
  'spray paint, 400 ml cans': 'Sprühfarbe, Dosen zu 400 ml',
  'primer, water-borne': 'Grundierung, wasserbasiert',
  'clear coat, flexible, water-borne': 'Klarlack, flexibel, wasserbasiert',
  'air-drying foam clay': 'lufttrocknende Modelliermasse',

  // Lines of the samples' models: pieces are called by their groups, and a German noun has its capital only where no other name stands before it.
  'o helm': '# Helm',
  'o bracer': '# Armschiene',
  'o lantern': '# Laterne',
  'o maul-head': '# Hammerkopf',
  'o shoulder-plate': '# Schulterplatte',
  'g band': 'g Reif',
  'g brow': 'g Stirn',
  'g cheek-left': 'g Wange-links',
  'g cheek-right': 'g Wange-rechts',
  'g crown-front-left': 'g Krone-vorn-links',
  'g crown-front-right': 'g Krone-vorn-rechts',
  'g crown-rear-left': 'g Krone-hinten-links',
  'g crown-rear-right': 'g Krone-hinten-rechts',
  'g keel-left': 'g Kiel-links',
  'g keel-right': 'g Kiel-rechts',
  'g neck-guard': 'g Nackenschutz',
  'g skirt': 'g Schürze',
  'g body': 'g Unterarm',
  'g elbow-flare': 'g Ellbogenrand',
  'g hand-flare': 'g Handrand',
  'g base': 'g Sockel',
  'g body-left': 'g Gehäuse-links',
  'g body-right': 'g Gehäuse-rechts',
  'g cap': 'g Haube',
  'g cap-eaves': 'g Haubenrand',
  'g eaves': 'g Traufe',
  'g roof': 'g Dach',
  'g vent': 'g Lüftung',
  'g bell-left': 'g Glocke-links',
  'g bell-right': 'g Glocke-rechts',
  'g chamfer-left': 'g Schräge-links',
  'g chamfer-right': 'g Schräge-rechts',
  'g collar': 'g Kragen',
  'g face-left': 'g Bahn-links',
  'g face-right': 'g Bahn-rechts',
  'g shoulder-left': 'g Schulter-links',
  'g shoulder-right': 'g Schulter-rechts',
  'g dome-back': 'g Kuppel-hinten',
  'g dome-front': 'g Kuppel-vorn',
  'g lip': 'g Lippe',
  'g lower-lame': 'g Schiene-unten',
  'g upper-lame': 'g Schiene-oben',

  // Parts of the kit.
  'Cover strips': 'Deckstreifen',
  Floor: 'Boden',
  Knob: 'Knopf',
  'Carrying ring': 'Tragring',
  'Roof badge': 'Dachabzeichen',
  Battery: 'Batterie',
  Lamp: 'Lampe',
  Handle: 'Stiel',
  Pommel: 'Knauf',
  Collar: 'Kragen',
  'Crown ring': 'Kronenring',
  Crown: 'Krone',
  'Hammer badge': 'Hammerabzeichen',

  'Lamplighter’s helm': 'Laternenhelm',
  Bracer: 'Armschiene',
  'Shoulder plate': 'Schulterplatte',
  'Maul head': 'Hammerkopf',
  Lantern: 'Laterne',
  'Maul and lantern': 'Hammer und Laterne',
  'A peaked helm with a flame-shaped keel, cheek guards and a neck guard, for a head of 580 mm girth.':
    'Ein spitzer Helm mit flammenförmigem Kiel, Wangen- und Nackenschutz, für einen Kopf von 580 mm Umfang.',
  'A forearm guard of eight panels, flared at both ends and laced along the back.':
    'Ein Unterarmschutz aus acht Feldern, an beiden Enden ausgestellt und hinten geschnürt.',
  'A ridged dome over two lames that overlap like roof tiles, the lower one with a lip.':
    'Eine gratige Kuppel über zwei Schienen, die sich wie Dachziegel überlappen, die untere mit einer Lippe.',
  'An eight-sided hammer head with chamfered faces and a hole for the handle below.':
    'Ein achtseitiger Hammerkopf mit gebrochenen Kanten und einem Loch für den Stiel unten.',
  'A six-sided lantern with arched windows, an overhanging roof and a vented cap.':
    'Eine sechsseitige Laterne mit Bogenfenstern, überstehendem Dach und belüfteter Haube.',
  'The whole props, with handle, pommel, badges and rings, a floor with a lamp and strips over seams.':
    'Die ganzen Requisiten, mit Stiel, Knauf, Abzeichen und Ringen, einem Boden mit Lampe und Streifen über Nähten.',
};
