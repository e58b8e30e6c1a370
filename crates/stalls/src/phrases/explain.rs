//! Why a vehicle waits, what is different from the plan before, and what is said on the phone.
//!
//! A time is said as "15:30" or as "Thu 10:00".

use phrases::phrases;

phrases! {
    /// Why an order waits.
    pub part_comes(until) = "its part comes {until}", "das Teil kommt {until}";
    /// Why an order waits.
    pub back_from_outside(until) = "it is back from outside {until}", "von auswärts zurück {until}";
    /// Why an order waits.
    pub answer_expected(until) = "the customer's yes or no is expected {until}", "der Kunde entscheidet voraussichtlich {until}";
    /// Why an order waits.
    pub has_to_cure(until) = "it has to cure until {until}", "es muss aushärten bis {until}";
    /// Why an order waits.
    pub has_to_cool(until) = "it has to cool down until {until}", "es muss abkühlen bis {until}";
    /// Why an order waits.
    pub customer_expected(until) = "the customer is expected {until}", "der Kunde kommt voraussichtlich {until}";
    /// Why an order waits: the vehicle is not here.
    pub it_comes(at) = "it comes {at}", "es kommt {at}";
    /// Why an order waits: a person is at another order.
    pub works_on_until(person, order, until) = "{person} works on {order} until {until}", "{person} arbeitet an {order} bis {until}";
    /// Why an order waits.
    pub away_until(person, until) = "{person} is away until {until}", "{person} ist weg bis {until}";
    /// Why an order waits: another stands in the stall.
    pub stands_in_until(order, stall, until) = "{order} stands in {stall} until {until}", "{order} steht auf {stall} bis {until}";
    /// Why an order waits: another is in the way.
    pub in_the_way_until(order, until) = "{order} stands in the way until {until}", "{order} steht im Weg bis {until}";
    /// Why an order waits: nobody is at work.
    pub work_goes_on(until) = "work goes on {until}", "weiter geht es {until}";
    /// What is different from the plan before: an order that was not in it.
    pub is_new(order, ready) = "{order} is new: ready {ready}", "{order} ist neu: fertig {ready}";
    /// What is different from the plan before: work was added to an order.
    pub more_phases(order, added, ready, before) = "{order} has {added} phases more than before: ready {ready} instead of {before}", "{order} hat {added} Arbeiten mehr als vorher: fertig {ready} statt {before}";
    /// When an order is ready, and when it was before.
    pub ready_instead(ready, before) = "ready {ready} instead of {before}", "fertig {ready} statt {before}";
    /// What is different from the plan before: an order is ready earlier.
    pub comes_forward(order, times) = "{order} comes forward: {times}", "{order} kommt früher dran: {times}";
    /// What is different from the plan before: an order is ready later, and why.
    pub waits_for(order, why, times) = "{order} waits: {why}; {times}", "{order} wartet: {why}; {times}";
    /// What is different from the plan before: an order is ready later.
    pub takes_longer(order, times) = "{order} takes longer: {times}", "{order} dauert länger: {times}";
    /// What is different from the plan before: another person does it; after it may follow why.
    pub does_instead(now, what, order, before) = "{now} does {what} on {order} instead of {before}", "{now} statt {before} bei {order}: {what}";
    /// What is different from the plan before: another stall; after it may follow why.
    pub goes_into_instead(order, now, before) = "{order} goes into {now} instead of {before}", "{order} kommt auf {now} statt {before}";
    /// Why an order does not go into a stall.
    pub stands_there_until(order, until) = "{order} stands there until {until}", "{order} steht dort bis {until}";
    /// Why somebody does not do it.
    pub is_not_there(person) = "{person} is not there", "{person} ist nicht da";
    /// What is said on the phone: a promise that will hardly be kept, with why, how often and by when instead.
    pub hardly_ready(order, promised, why, often, by) = "{order} will hardly be ready {promised} as we said{why}. {often} in ten it is ready by {by}. Does that suit?", "{order} wird {promised}, wie zugesagt, kaum fertig{why}. {often} ist es bis {by} fertig. Passt das?";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub never = "Never", "In keinem von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub once = "Once", "In einem von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub twice = "Twice", "In zwei von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub three_times = "Three times", "In drei von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub four_times = "Four times", "In vier von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub five_times = "Five times", "In fünf von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub six_times = "Six times", "In sechs von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub seven_times = "Seven times", "In sieben von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub eight_times = "Eight times", "In acht von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub nine_times = "Nine times", "In neun von zehn Fällen";
    /// How often in ten, at the start of a sentence; in English "in ten" follows.
    pub ten_times = "Ten times", "In zehn von zehn Fällen";
}
