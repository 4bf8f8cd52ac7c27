package org.scrubline.committee.pack;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.scrubline.signoff.SheetContent.Named;

/**
 * Everything a committee sees of one trainee, as known at the cut-off. Its canonical JSON (RFC 8785) is what is frozen;
 * made again from the records with the same cut-off it is the same text. Shares and chances lie in 0..1 and are rounded
 * to four decimals.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param engine version of the competency model
 * @param settings the programme's numbers that differed from the defaults, by key
 * @param rubrics every version a record was scored with
 * @param procedures those with a counted case, in the order of lists
 * @param families what the evidence says on each level, for families with a counted case
 * @param records the newest version of every sheet, oldest case first, void ones too
 * @param scorers who signed what counts, the most records first
 * @param cautions message keys of the cautions that go with these numbers
 * @param training what the levels without a gate ask of the training record; null in the form before
 */
public record PackContent(
        String schema,
        Named organisation,
        Named programme,
        UUID meeting,
        Named trainee,
        Instant cutOff,
        String engine,
        Map<String, Integer> settings,
        List<RubricLine> rubrics,
        List<ProcedureLine> procedures,
        List<FamilyLine> families,
        List<RecordLine> records,
        List<ScorerLine> scorers,
        List<String> cautions,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<TrainingLine> training) {

    /** Name and version of this form; a change of its members is another version. */
    public static final String SCHEMA = "scrubline-pack/2";

    /** The form before training records and outcomes; evidence frozen in it is made again in it. */
    static final String FIRST = "scrubline-pack/1";

    /** A rubric version, by its hash. */
    public record RubricLine(UUID id, String procedure, String title, String version, String contentHash) {}

    /**
     * One procedure.
     *
     * @param fit the population values the curve rests on
     * @param shown what is short before a modelled number is shown
     * @param supports what is short before the numbers may support a proposal
     * @param model null while {@code shown} is not empty or the evidence index is too low
     * @param verdicts counted records by verdict
     * @param bands counted records by complexity band
     * @param chart the control chart of critical events
     */
    public record ProcedureLine(
            String procedure,
            String title,
            FitLine fit,
            int cases,
            int sheets,
            int assisted,
            int awaiting,
            int contested,
            List<ShortLine> shown,
            List<ShortLine> supports,
            @Nullable ModelLine model,
            Map<Verdict, Integer> verdicts,
            Map<Band, Integer> bands,
            ChartLine chart,
            List<StepLine> steps) {}

    /** {@code id} is null when the values were made from the records of the cut-off. */
    public record FitLine(@Nullable UUID id, Instant dataUntil, int sheets, boolean own) {}

    /** A requirement of a gate that is not met; {@code step} is the code of a critical step or null. */
    public record ShortLine(
            String kind, int has, int needs, @Nullable String step) {}

    /** The curve and the next typical case against each standard. */
    public record ModelLine(double index, List<PointLine> points, List<ReadinessLine> next) {}

    /**
     * One case on the curve.
     *
     * @param raw share of scores at 4 or 5 on each record of the case
     * @param daysAway whole days since the case before when that was a gap, otherwise 0
     */
    public record PointLine(
            UUID caseId,
            Instant endedAt,
            double chance,
            double low,
            double high,
            List<Double> raw,
            int daysAway,
            boolean contested,
            boolean awaitingCountersignature) {}

    /**
     * The model's answer on one standard.
     *
     * @param steps level every critical step is asked to reach
     * @param wanted chance asked for of the whole case
     * @param assurance probability that the chance is at least that
     * @param says SUPPORTS, NOT_YET or INSUFFICIENT
     */
    public record ReadinessLine(
            String level,
            int steps,
            double wanted,
            double chance,
            double low,
            double high,
            double assurance,
            String says) {}

    /** Numbers of the cases at which the chart signalled, from 1; null when it did not. */
    public record ChartLine(
            List<Integer> eventAt,
            @Nullable Integer signalAt,
            @Nullable Integer worseAt) {}

    /** Counts of one step; {@code levels} from level 1 to 5. */
    public record StepLine(
            String code,
            String name,
            boolean critical,
            List<Integer> levels,
            int bySupervisor,
            int notPart,
            int notSeen) {}

    /** What the evidence says in one family; {@code procedure} is the one with the most cases, whose gates and model count. */
    public record FamilyLine(Family family, String procedure, List<LevelLine> levels) {

        public Optional<LevelLine> level(String code) {
            return levels.stream().filter(level -> level.level().equals(code)).findFirst();
        }
    }

    /** What the evidence says on one level; {@code gate} is the one that is not met, null when all are. */
    public record LevelLine(
            String level, Answer answer, @Nullable Gate gate, List<AskLine> asks) {}

    /** The only three things a proposal says. */
    public enum Answer {
        SUPPORTS,
        NOT_YET,
        INSUFFICIENT
    }

    /** The gates in their order. */
    public enum Gate {
        /** Enough to show a modelled number. */
        SHOWN,
        /** Enough for the numbers to support a proposal. */
        SUPPORTS,
        /** The committee's checklist of the level and the model's standard. */
        ENTITLEMENT
    }

    /**
     * One row of the checklist.
     *
     * @param records the records behind {@code has}; of the training record, its entries
     */
    public record AskLine(Ask ask, int has, int needs, boolean met, List<UUID> records) {

        /**
         * Whether the line itself is fulfilled. A modelled number never counts as met while a gate before it is closed; a
         * reader who is told "99 of 80" is then missing the gate, not the number.
         */
        public boolean fulfilled() {
            return met || (ask == Ask.MODEL && has >= needs);
        }
    }

    /** What a level without a gate asks of the training record; it belongs to no family. */
    public record TrainingLine(String level, List<AskLine> asks) {}

    /** A signed record, by its hash, with what stood beside it. */
    public record RecordLine(
            UUID id,
            UUID sheet,
            int version,
            String contentHash,
            String procedure,
            UUID rubric,
            UUID caseId,
            Instant endedAt,
            Instant signedAt,
            UUID signer,
            String signerName,
            Band band,
            Part part,
            Verdict verdict,
            boolean late,
            boolean contested,
            @Nullable String contestOutcome,
            boolean awaiting,
            boolean voided) {}

    /** How many of the counted records one person signed. */
    public record ScorerLine(UUID id, String name, int records, int of) {}

    public static PackContent read(String json) {
        return CanonicalJson.read(json, PackContent.class);
    }

    public Optional<FamilyLine> family(Family family) {
        return families.stream().filter(line -> line.family() == family).findFirst();
    }

    public Optional<ProcedureLine> procedure(String code) {
        return procedures.stream().filter(line -> line.procedure().equals(code)).findFirst();
    }
}
