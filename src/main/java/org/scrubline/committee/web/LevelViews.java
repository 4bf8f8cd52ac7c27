package org.scrubline.committee.web;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.committee.pack.Ask;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.committee.pack.PackContent.Answer;
import org.scrubline.committee.pack.PackContent.AskLine;
import org.scrubline.committee.pack.PackContent.FamilyLine;
import org.scrubline.committee.pack.PackContent.LevelLine;
import org.scrubline.committee.pack.PackContent.ProcedureLine;
import org.scrubline.committee.pack.PackContent.RecordLine;
import org.scrubline.committee.web.EvidencePage.AskView;
import org.scrubline.committee.web.EvidencePage.FamilyView;
import org.scrubline.committee.web.EvidencePage.LevelView;
import org.scrubline.committee.web.EvidencePage.TrainingView;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.entitlement.EntitlementWords;
import org.springframework.stereotype.Component;

/** Says what the evidence says on each level, row by row. */
@Component
class LevelViews {

    private final EntitlementWords entitlements;
    private final CommitteeWords words;

    LevelViews(EntitlementWords entitlements, CommitteeWords words) {
        this.entitlements = entitlements;
        this.words = words;
    }

    FamilyView of(FamilyLine family, PackContent content, Map<UUID, RecordLine> records, ZoneId zone) {
        String procedure =
                content.procedure(family.procedure()).map(ProcedureLine::title).orElse(family.procedure());
        return new FamilyView(
                entitlements.family(family.family()),
                words.say("committee.family.basis", procedure),
                family.levels().stream()
                        .map(level -> level(family, level, records, zone))
                        .toList());
    }

    /** What levels without a gate ask of the training record. */
    List<TrainingView> training(PackContent content, ZoneId zone) {
        return Stream.ofNullable(content.training())
                .flatMap(List::stream)
                .map(line -> new TrainingView(
                        entitlements.level(EntitlementLevel.valueOf(line.level())),
                        line.asks().stream()
                                .map(ask -> ask(ask, Map.of(), zone))
                                .toList()))
                .toList();
    }

    private LevelView level(FamilyLine family, LevelLine line, Map<UUID, RecordLine> records, ZoneId zone) {
        String level = entitlements.level(EntitlementLevel.valueOf(line.level()));
        return new LevelView(
                family.family() + "-" + line.level(),
                level,
                answer(line.answer()),
                line.answer() == Answer.SUPPORTS,
                line.gate() == null ? null : words.say("committee.gate." + line.gate()),
                line.asks().stream().map(ask -> ask(ask, records, zone)).toList());
    }

    /** One of the three phrases a page may use. */
    String answer(Answer answer) {
        return words.say("committee.answer." + answer);
    }

    private AskView ask(AskLine line, Map<UUID, RecordLine> records, ZoneId zone) {
        return new AskView(
                words.say("committee.ask." + line.ask(), line.needs()),
                line.ask() == Ask.MODEL ? words.say("committee.percent", line.has()) : Integer.toString(line.has()),
                line.fulfilled(),
                links(line, records, zone));
    }

    private List<Link> links(AskLine line, Map<UUID, RecordLine> records, ZoneId zone) {
        return line.records().stream()
                .flatMap(id -> Stream.ofNullable(records.get(id)))
                .map(record -> Link.of(
                        Links.record(record.id()),
                        words.say(
                                "committee.record.short",
                                words.day(record.endedAt(), zone),
                                record.band().name())))
                .toList();
    }
}
