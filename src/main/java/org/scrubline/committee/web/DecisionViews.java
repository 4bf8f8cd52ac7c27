package org.scrubline.committee.web;

import java.time.ZoneId;
import org.scrubline.committee.DecisionContent;
import org.scrubline.people.People;
import org.springframework.stereotype.Component;

/** Puts a decision into words. */
@Component
class DecisionViews {

    private final DecisionWords decisions;
    private final People people;
    private final CommitteeWords words;

    DecisionViews(DecisionWords decisions, People people, CommitteeWords words) {
        this.decisions = decisions;
        this.people = people;
        this.words = words;
    }

    DecisionView of(DecisionContent content) {
        ZoneId zone = people.programme(content.programme().id()).zone();
        return new DecisionView(
                decisions.title(content),
                content.trainee().name(),
                decisions.matter(content),
                decisions.answer(content),
                decisions.meaning(content),
                words.say("committee.review", words.day(content.reviewOn())),
                decisions.evidence(content),
                CommitteeWords.paragraphs(content.reasons()),
                CommitteeWords.paragraphs(content.departing()),
                CommitteeWords.paragraphs(content.dissent()),
                decisions.votes(content),
                decisions.members(content),
                words.at(content.meetingAt(), zone),
                Links.evidence(content.meeting(), content.trainee().id()),
                content.pack().contentHash());
    }
}
