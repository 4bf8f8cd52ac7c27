package org.scrubline.signoff.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.NotFound;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.RecordHistory;
import org.scrubline.signoff.SheetContent;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.web.ComparePage.Group;
import org.scrubline.signoff.web.ComparePage.Row;
import org.scrubline.signoff.web.ComparePage.Side;
import org.springframework.stereotype.Component;

/** Sets two versions of a record side by side, everything that was signed in both. */
@Component
class ComparePages {

    private final RecordPages pages;
    private final RecordWords words;
    private final Rubrics rubrics;

    ComparePages(RecordPages pages, RecordWords words, Rubrics rubrics) {
        this.pages = pages;
        this.words = words;
        this.rubrics = rubrics;
    }

    /**
     * The page, the older version first.
     *
     * @throws NotFound when one of the two is no version of this record
     */
    ComparePage of(RecordHistory history, UUID one, UUID other) {
        List<SignedSheet> two = history.versions().stream()
                .filter(version -> version.id().equals(one) || version.id().equals(other))
                .toList();
        if (two.size() != 2) {
            throw new NotFound();
        }
        SheetContent left = content(two.get(0));
        SheetContent right = content(two.get(1));
        List<Group> groups = groups(shown(left), shown(right));
        long changed = groups.stream()
                .flatMap(group -> group.rows().stream())
                .filter(Row::changed)
                .count();
        return new ComparePage(
                words.say(
                        "signoff.compare.about",
                        left.trainee().name(),
                        left.rubric().title(),
                        left.operation().reference()),
                side(two.get(0), left),
                side(two.get(1), right),
                words.say("signoff.compare.changed", changed),
                groups);
    }

    private static SheetContent content(SignedSheet version) {
        return SignedContent.read(version.content()).reviewed();
    }

    private RecordPage shown(SheetContent content) {
        Rubric rubric =
                rubrics.byId(content.rubric().id()).orElseThrow(NotFound::new).rubric();
        return pages.of(content, rubric, Map.of());
    }

    private Side side(SignedSheet version, SheetContent content) {
        return new Side(
                words.say("signoff.version", version.versionNo()),
                "/signed/" + version.id(),
                words.say(
                        "signoff.compare.signed",
                        version.signerName(),
                        words.say("role." + version.signerRole()),
                        words.at(version.signedAt(), version.signedZone()),
                        content.signer().meaning()),
                content.replaces() == null ? "" : content.replaces().reason());
    }

    private List<Group> groups(RecordPage left, RecordPage right) {
        List<Group> groups = new ArrayList<>();
        groups.add(group("signoff.verdict", verdict(left), verdict(right)));
        groups.add(group("signoff.feedback", lines(left.feedback()), lines(right.feedback())));
        groups.add(group("signoff.steps", steps(left), steps(right)));
        groups.add(group("signoff.events", events(left), events(right)));
        groups.add(group("signoff.case.title", facts(left), facts(right)));
        return groups.stream().filter(group -> !group.rows().isEmpty()).toList();
    }

    private Group group(String titleKey, Map<String, String> left, Map<String, String> right) {
        Set<String> labels = new LinkedHashSet<>(left.keySet());
        labels.addAll(right.keySet());
        String none = words.say("signoff.compare.none");
        return new Group(
                words.say(titleKey),
                labels.stream()
                        .map(label -> new Row(label, left.getOrDefault(label, none), right.getOrDefault(label, none)))
                        .toList());
    }

    private Map<String, String> verdict(RecordPage page) {
        Map<String, String> verdict = new LinkedHashMap<>();
        verdict.put(words.say("signoff.verdict"), page.verdict());
        if (!page.reasons().isEmpty()) {
            verdict.put(words.say("signoff.compare.reasons"), String.join(" ", page.reasons()));
        }
        return verdict;
    }

    /** The reason of a version stands in the head already. */
    private Map<String, String> facts(RecordPage page) {
        Map<String, String> facts = lines(page.lines());
        facts.remove(words.say("signoff.version.reason"));
        return facts;
    }

    private static Map<String, String> lines(List<RecordPage.Line> lines) {
        Map<String, String> said = new LinkedHashMap<>();
        lines.forEach(line -> said.put(line.label(), line.text()));
        return said;
    }

    private Map<String, String> steps(RecordPage page) {
        Map<String, String> said = new LinkedHashMap<>();
        page.phases().stream().flatMap(phase -> phase.steps().stream()).forEach(step -> {
            said.put(
                    step.name(),
                    step.level() == null ? step.said() : words.say("signoff.compare.level", step.level(), step.said()));
            if (!step.measures().isEmpty()) {
                said.put(words.say("signoff.compare.measures", step.name()), String.join("; ", step.measures()));
            }
        });
        return said;
    }

    /** Several events of one kind at one place are numbered by their order. */
    private Map<String, String> events(RecordPage page) {
        Map<String, String> said = new LinkedHashMap<>();
        for (RecordPage.EventView event : page.events()) {
            String what = event.place() == null ? event.name() : event.name() + ", " + event.place();
            String label = what;
            for (int again = 2; said.containsKey(label); again++) {
                label = words.say("signoff.compare.again", what, again);
            }
            List<String> facts = new ArrayList<>(event.facts());
            facts.add(event.action());
            facts.removeIf(String::isEmpty);
            said.put(label, facts.isEmpty() ? words.say("signoff.compare.recorded") : String.join("; ", facts));
        }
        return said;
    }
}
