package org.scrubline.committee.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.Decision;
import org.scrubline.committee.Meeting;
import org.scrubline.committee.MeetingState;
import org.scrubline.committee.Pack;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.committee.pack.PackContent.RecordLine;
import org.scrubline.committee.pack.PackWriter;
import org.scrubline.people.People;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.springframework.stereotype.Component;

/** Makes the page of frozen evidence. Everything on it is read from the pack; the links lead to the records. */
@Component
class PackPages {

    private static final int HASH_SHOWN = 12;

    private final ProcedureViews procedures;
    private final LevelViews levels;
    private final DecisionWords decisions;
    private final People people;
    private final CommitteeWords words;

    PackPages(
            ProcedureViews procedures,
            LevelViews levels,
            DecisionWords decisions,
            People people,
            CommitteeWords words) {
        this.procedures = procedures;
        this.levels = levels;
        this.decisions = decisions;
        this.people = people;
        this.words = words;
    }

    /** What the page says beside the pack itself. */
    record Around(
            List<Decision> decisions, @Nullable Link write, String back, EvidencePage.@Nullable Rebuilt rebuilt) {}

    EvidencePage of(Pack pack, Around around) {
        PackContent content = pack.content();
        ZoneId zone = people.programme(content.programme().id()).zone();
        Map<UUID, RecordLine> records =
                content.records().stream().collect(Collectors.toMap(RecordLine::id, Function.identity()));
        return new EvidencePage(
                Links.evidence(content.meeting(), content.trainee().id()),
                words.say("committee.evidence.title", content.trainee().name()),
                facts(content, zone),
                cautions(content),
                content.families().stream()
                        .map(family -> levels.of(family, content, records, zone))
                        .toList(),
                levels.training(content, zone),
                content.procedures().stream()
                        .map(one -> procedures.of(one, zone))
                        .toList(),
                scorers(content),
                records(content, zone),
                notes(content, zone),
                rubrics(content),
                around.decisions().stream()
                        .map(decision -> new Link(
                                Links.decision(decision.id()),
                                decisions.title(decision.content()),
                                decisions.answer(decision.content()),
                                null))
                        .toList(),
                around.write(),
                around.back(),
                pack.hash(),
                around.rebuilt());
    }

    /** The caution about small samples stands beside each procedure that it is about, once there is one. */
    private static List<String> cautions(PackContent content) {
        return content.cautions().stream()
                .filter(one -> content.procedures().isEmpty() || !one.equals(PackWriter.SMALL_SAMPLE))
                .toList();
    }

    static @Nullable Link write(Meeting meeting, UUID trainee, UUID reader, String label) {
        return meeting.chairId().equals(reader) && meeting.state() == MeetingState.OPEN
                ? Link.of(Links.writing(meeting.id(), trainee), label)
                : null;
    }

    private List<Fact> facts(PackContent content, ZoneId zone) {
        return List.of(
                new Fact(words.at(content.cutOff(), zone), words.say("committee.evidence.cut-off")),
                new Fact(Integer.toString(content.records().size()), words.say("committee.evidence.records")),
                new Fact(content.engine(), words.say("committee.evidence.engine")),
                new Fact(Integer.toString(content.settings().size()), words.say("committee.evidence.settings")));
    }

    private TableView scorers(PackContent content) {
        return new TableView(
                List.of(
                        new Column(words.say("committee.column.scorer"), false),
                        new Column(words.say("committee.column.records"), true),
                        new Column(words.say("committee.column.share"), true)),
                content.scorers().stream()
                        .map(one -> List.of(
                                Cell.of(one.name()),
                                Cell.of(words.say("committee.of", one.records(), one.of())),
                                Cell.of(words.say(
                                        "committee.percent",
                                        CommitteeWords.percent((double) one.records() / one.of())))))
                        .toList());
    }

    private TableView records(PackContent content, ZoneId zone) {
        return new TableView(
                Stream.of("case", "procedure", "band", "scorer", "verdict", "marks", "hash")
                        .map(key -> new Column(words.say("committee.column." + key), false))
                        .toList(),
                content.records().stream()
                        .map(record -> List.of(
                                new Cell(words.day(record.endedAt(), zone), Links.record(record.id())),
                                Cell.of(title(content, record)),
                                Cell.of(record.band().name()),
                                Cell.of(record.signerName()),
                                Cell.of(words.say("committee.verdict." + record.verdict())),
                                Cell.of(marks(record)),
                                Cell.of(record.contentHash().substring(0, HASH_SHOWN))))
                        .toList());
    }

    private static String title(PackContent content, RecordLine record) {
        return content.rubrics().stream()
                .filter(rubric -> rubric.id().equals(record.rubric()))
                .map(PackContent.RubricLine::title)
                .findFirst()
                .orElse(record.procedure());
    }

    private String marks(RecordLine record) {
        String marks = markKeys(record).map(words::say).collect(Collectors.joining(", "));
        return marks.isEmpty() ? "–" : marks;
    }

    /** What a committee must see beside a record. */
    private static Stream<String> markKeys(RecordLine record) {
        Stream<@Nullable String> all = Stream.of(
                record.voided() ? "committee.mark.void" : null,
                record.contested() ? "committee.mark.contested" : null,
                record.contestOutcome() == null ? null : "committee.mark.outcome." + record.contestOutcome(),
                record.awaiting() ? "committee.mark.awaiting" : null,
                record.late() ? "committee.mark.late" : null,
                record.version() > 1 ? "committee.mark.version" : null);
        return all.flatMap(Stream::ofNullable);
    }

    private List<String> notes(PackContent content, ZoneId zone) {
        return content.records().stream()
                .filter(record -> markKeys(record).findAny().isPresent())
                .map(record -> words.say(
                        "committee.note", words.day(record.endedAt(), zone), record.signerName(), marks(record)))
                .toList();
    }

    private TableView rubrics(PackContent content) {
        return new TableView(
                Stream.of("procedure", "version", "hash")
                        .map(key -> new Column(words.say("committee.column." + key), false))
                        .toList(),
                content.rubrics().stream()
                        .map(rubric -> List.of(
                                Cell.of(rubric.title()),
                                Cell.of(rubric.version()),
                                Cell.of(rubric.contentHash().substring(0, HASH_SHOWN))))
                        .toList());
    }
}
