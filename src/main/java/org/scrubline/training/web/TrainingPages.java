package org.scrubline.training.web;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.people.People;
import org.scrubline.people.Placement;
import org.scrubline.people.PlacementWords;
import org.scrubline.people.Placements;
import org.scrubline.people.TrainingTime;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.training.Exercise;
import org.scrubline.training.TrainingEntry;
import org.scrubline.training.TrainingFile;
import org.scrubline.training.TrainingKind;
import org.scrubline.training.web.TrainingPage.Option;
import org.springframework.stereotype.Component;

/** Makes the page of one trainee's record. */
@Component
class TrainingPages {

    private final Placements placements;
    private final PlacementWords places;
    private final People people;
    private final Rubrics rubrics;
    private final TrainingWords words;

    TrainingPages(Placements placements, PlacementWords places, People people, Rubrics rubrics, TrainingWords words) {
        this.placements = placements;
        this.places = places;
        this.people = people;
        this.rubrics = rubrics;
        this.words = words;
    }

    TrainingPage of(TrainingFile file) {
        UUID trainee = file.trainee().id();
        ZoneId zone = file.programme().zone();
        List<Placement> all = placements.of(file.programme().id()).stream()
                .filter(one -> one.traineeId().equals(trainee))
                .toList();
        return new TrainingPage(
                "/training/" + trainee,
                file.trainee().printedName(),
                file.programme().name(),
                missing(file.entries()),
                entries(file.entries(), zone),
                placed(all),
                gaps(new TrainingTime(all)),
                earlier(trainee),
                kinds(file),
                Arrays.stream(Exercise.values())
                        .map(one -> new Option(one.name(), words.say("training.exercise." + one)))
                        .toList(),
                file.answers() ? waiting(file) : List.of(),
                file.declares() ? procedures() : List.of());
    }

    /** What the first two levels ask for; see the committee's checklist. */
    List<String> missing(List<TrainingEntry> entries) {
        return Stream.of(
                        entries.stream().noneMatch(one -> one.kind() == TrainingKind.INDUCTION) ? "induction" : "",
                        signedOff(entries, Exercise.FLAP) ? "" : "flap",
                        signedOff(entries, Exercise.SUTURE) ? "" : "suture")
                .filter(key -> !key.isEmpty())
                .map(key -> words.say("training.missing." + key))
                .toList();
    }

    private static boolean signedOff(List<TrainingEntry> entries, Exercise exercise) {
        return entries.stream().anyMatch(one -> one.signedOff() && one.exercise() == exercise);
    }

    private TableView entries(List<TrainingEntry> entries, ZoneId zone) {
        return new TableView(
                columns("day", "about", "said", "author", "state"),
                entries.stream()
                        .map(entry -> Stream.of(
                                        words.day(entry.day()),
                                        words.about(entry),
                                        entry.said(),
                                        words.author(entry, zone),
                                        words.state(entry, zone))
                                .map(Cell::of)
                                .toList())
                        .toList());
    }

    private TableView placed(List<Placement> all) {
        return new TableView(
                columns("site", "first", "last", "share", "note"),
                all.stream()
                        .map(one -> places.cells(one).stream().map(Cell::of).toList())
                        .toList());
    }

    private List<String> gaps(TrainingTime time) {
        return time.gaps().stream()
                .map(gap -> words.say("training.gap", words.day(gap.first()), words.day(gap.last()), gap.days()))
                .toList();
    }

    /** Procedures with cases declared from before joining. */
    private TableView earlier(UUID trainee) {
        return new TableView(
                columns("procedure", "cases"),
                current()
                        .filter(rubric -> people.priorExperience(trainee, rubric.procedure()) > 0)
                        .map(rubric -> List.of(
                                Cell.of(rubric.title()), Cell.of(people.priorExperience(trainee, rubric.procedure()))))
                        .toList());
    }

    private Stream<Rubric> current() {
        return rubrics.inForce().stream().map(PublishedRubric::rubric);
    }

    private List<Option> procedures() {
        return current()
                .map(rubric -> new Option(rubric.procedure(), rubric.title()))
                .toList();
    }

    private List<Option> kinds(TrainingFile file) {
        return Arrays.stream(TrainingKind.values())
                .filter(file.writes()::contains)
                .map(kind -> new Option(kind.name(), words.say("training.kind." + kind)))
                .toList();
    }

    private List<Option> waiting(TrainingFile file) {
        return file.waiting().stream()
                .map(entry -> new Option(
                        entry.id().toString(), words.say("training.entry", words.day(entry.day()), words.about(entry))))
                .toList();
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(words.say("training.column." + key), key.equals("share") || key.equals("cases")))
                .toList();
    }
}
