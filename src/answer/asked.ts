/** Every question by its short name, in the words of the reader who asks it. */
const words = {
  "feet-seen": "How many horses and feet did I see, and how many did I not get to see?",
  "feet-long-unseen": "Which feet have gone longest without being looked at?",
  "over-the-date": "Which horses ran over their date, by how many days, and is it the same ones?",
  "new-and-standing-thrush": "Which frogs went off after a clear visit, and which never came clear?",
  "hinds-or-fronts": "Do hind feet get thrush more than front feet, and in which cleft?",
  "toes-between-visits": "Whose toes gain most from one trim to the next?",
  "heels-running-under": "Whose heels are running under?",
  "fronts-going-odd": "Which pairs of front feet are uneven, or growing apart?",
  "shoes-staying-on": "How long do shoes stay on, in wet weeks and in dry ones?",
  "shape-by-interval": "Do horses on short intervals hold their shape better than those on long ones?",
  "marks-on-the-wall": "When did that ring or abscess track begin, give or take?",
  "for-the-vet": "Which feet are the vet's?",
  "due-and-over": "Who is due this week, who next week, and who is over?",
  "thrush-now": "What share of the horses had thrush at their last visit, and how sure is that?",
  "since-last-year": "Is it better or worse than in the same months a year ago?",
  "yards-and-ground": "Which yard, ground or bedding keeps turning up soft frogs?",
  "since-the-change": "Did the change we made go with fewer bad frogs?",
  "horses-to-watch": "Which horses should be looked at first when the ground goes soft?",
  "bad-visits-running": "Which horses had two bad visits running, or a finding for the vet?",
  "keeping-the-interval": "Are the agreed intervals kept, and which horses and yards slip?",
  "feet-of-one-visit": "How do the four feet of this horse stand beside the herd?",
  "horse-history": "What has been recorded of all four feet of this horse?",
  "thrush-by-month": "When in the year do frogs go off, and how does that lie beside the rain?",
  "thrush-after-rain": "Were frogs worse when it had rained more before the visit?",
  "front-and-hind": "How do front and hind feet differ in shape?",
  "prevalence-by-level": "How frequent is thrush per foot, visit, horse and yard, and how alike are feet of one horse?",
  "where-it-varies": "How much of the variation lies between yards, horses, feet and observers?",
  "observers-agreeing": "Do observers agree, and does that drift?",
  "gaps-and-grades": "Do gaps between visits go with the last grade, and does that move the prevalence?",
  "missing-feet": "How far could feet that were not graded move the prevalence?",
  "growth-of-the-wall": "How fast do the walls of this herd grow, by season, age and horse?",
  "toe-by-the-date": "How much toe may each foot have gained by its planned date?",
  "shape-past-threshold": "Which feet are past a threshold of shape, and whose threshold is it?",
  "usual-shape": "What shape of foot is usual in this herd?",
  "front-and-hind-by-type": "How much do front and hind feet differ, by type of horse and by age?",
  "shape-and-size": "Do fore and hind feet differ in shape once horse and size are allowed for?",
  "outlines-front-and-hind": "How does the outline of front feet differ from that of hind feet?",
  "front-or-hind": "Is this a front or a hind foot, going by its shape?",
  "shape-repeated": "How well are measures of shape repeated, and what change is more than reading error?",
  rebuild: "What is needed to make every number again?",

  "study-declaration": "What was declared before anything was estimated?",
  "study-records": "Who is in the study, and what was lost on the way?",
  "study-description": "How frequent is thrush, how often does it come and stay, and where?",
  "study-exposure": "How wet was it before the visits, and is that more than the season?",
  "rain-effect": "Does wet ground make frogs worse, by how much, and how sure is that?",
  "rain-lag-and-shape": "How long after rain, in what shape, and does it hold for yards not looked at?",
  "rain-sensitivity": "Would the answer survive other choices?",
  "detectable-effect": "What effect could a study of this size find?",
  "horn-colour": "Do light feet get thrush more than dark ones of the same horse?",
  "interval-length": "Do feet on longer intervals get thrush more, shod and bare apart?",
  "study-paper": "What goes into the paper?",
} as const;

/** Short name of a question, as used on the command line. */
export type QuestionId = keyof typeof words;

/** A question by its short name, with its words: what every reply begins with. @private */
export function asked<Id extends QuestionId>(id: Id): { readonly id: Id; readonly question: string } {
  return { id, question: words[id] };
}
