package org.scrubline.command;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.CurvePoint;
import org.scrubline.scoring.curve.Evidence;
import org.scrubline.scoring.curve.Flag;
import org.scrubline.scoring.curve.PlainNextCase;
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.scoring.curve.Psi;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.scoring.curve.RunningPath;
import org.scrubline.scoring.curve.RunningPoint;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.ScorerSignals;
import org.scrubline.scoring.curve.StepCurve;
import org.scrubline.scoring.curve.TraineeSignals;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes the result as JSON, trainee by trainee, so that the largest file needs one curve in memory. */
final class CurvesReport {

    private static final String CAUTION =
            "Supports, does not replace, the judgement of licensed supervisors and local policy.";

    private final CurvesScores scores;
    private final ScoreTable table;
    private final PopulationFit fit;
    private final ProcedureStandard standard;
    private final int level;
    private final Map<String, List<Double>> gradient;

    CurvesReport(
            CurvesScores scores,
            PopulationFit fit,
            ProcedureStandard standard,
            int level,
            Map<String, List<Double>> gradient) {
        this.scores = scores;
        this.table = scores.table();
        this.fit = fit;
        this.standard = standard;
        this.level = level;
        this.gradient = gradient;
    }

    /** @param pictures directory for one picture a trainee */
    void write(OutputStream stream, Optional<Path> pictures) throws IOException {
        if (pictures.isPresent()) {
            Files.createDirectories(pictures.get());
        }
        JsonMapper mapper = JsonMapper.builder()
                .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
                .build();
        try (JsonGenerator json = mapper.createGenerator(stream)) {
            json.writeStartObject();
            json.writeStringProperty("engine_version", fit.engineVersion());
            json.writeStringProperty("caution", CAUTION);
            json.writeNumberProperty("laplace_loglik", fit.logLikelihood());
            psi(json);
            strings(json, "steps", scores.stepOrder());
            List<Double> effects = new ArrayList<>();
            json.writeArrayPropertyStart("trainees");
            for (String trainee : table.trainees()) {
                CompetencyCurve curve = CompetencyModel.smooth(fit, table, trainee, standard);
                effects.add(curve.startLevel());
                trainee(json, curve);
                if (pictures.isPresent()) {
                    CurvesPicture.write(pictures.get(), table.trainees().indexOf(trainee), curve, level);
                }
            }
            json.writeEndArray();
            supervisors(json, effects);
            if (!gradient.isEmpty()) {
                json.writeObjectPropertyStart("gradient_at_psi");
                gradientInStepOrder().forEach((group, values) -> numbers(json, group, values));
                json.writeEndObject();
            }
            json.writeEndObject();
        }
    }

    private void psi(JsonGenerator json) {
        Psi psi = fit.psi();
        json.writeObjectPropertyStart("psi");
        numbers(json, "tau", psi.thresholds());
        numbers(json, "beta", inStepOrder(psi.difficulty()));
        numbers(json, "gamma", psi.complexity());
        if (fit.terms().growth()) {
            json.writeNumberProperty("mu_g", psi.gain());
        }
        if (fit.terms().gap()) {
            json.writeNumberProperty("phi", psi.gapLoss());
        }
        json.writeNumberProperty("s_a", psi.levelSd());
        number(json, "s_g", psi.gainSd(), fit.terms().growth());
        number(json, "s_d", psi.stepSd(), fit.terms().traineeStep());
        number(json, "s_u", psi.assessmentSd(), fit.terms().assessment());
        json.writeNumberProperty("s_l", psi.severitySd());
        number(json, "s_n", psi.pairSd(), fit.terms().traineeSupervisor());
        number(json, "q", psi.walk(), fit.terms().chain());
        number(json, "qg", psi.gapWalk(), fit.terms().chain() && fit.terms().gap());
        if (!psi.range().isEmpty()) {
            numbers(json, "rho", psi.range());
        }
        if (!psi.halo().isEmpty()) {
            numbers(json, "halo", psi.halo());
        }
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, String name, double value, boolean present) {
        if (present) {
            json.writeNumberProperty(name, value);
        }
    }

    private List<Double> inStepOrder(List<Double> byTable) {
        return scores.stepOrder().stream()
                .map(code -> byTable.get(table.steps().indexOf(code)))
                .toList();
    }

    private void trainee(JsonGenerator json, CompetencyCurve curve) {
        json.writeStartObject();
        id(json, "trainee", curve.trainee());
        List<CurvePoint> p = curve.points();
        String ability = "ability_minus_tau" + level;
        numbers(json, ability + "_mean", p.stream().map(CurvePoint::plainLevel).toList());
        numbers(json, "ability_sd", p.stream().map(CurvePoint::plainSd).toList());
        numbers(json, "panel_mean", p.stream().map(CurvePoint::level).toList());
        numbers(json, "panel_sd", p.stream().map(CurvePoint::sd).toList());
        json.writeNumberProperty("a", curve.startLevel());
        json.writeNumberProperty("g", curve.gain());
        numbers(
                json,
                "delta",
                inStepOrder(curve.steps().stream().map(StepCurve::effect).toList()));
        RunningPath path = RunningPath.of(fit, table, curve.trainee());
        running(json, path);
        numbers(json, "experience", p.stream().map(CurvePoint::experience).toList());
        numbers(json, "band_low", p.stream().map(CurvePoint::low).toList());
        numbers(json, "band_high", p.stream().map(CurvePoint::high).toList());
        numbers(
                json,
                "delta_sd",
                inStepOrder(curve.steps().stream().map(StepCurve::effectSd).toList()));
        evidence(json, curve.evidence());
        json.writeArrayPropertyStart("readiness");
        curve.readiness().forEach(readiness -> readiness(json, readiness));
        json.writeEndArray();
        flags(json, TraineeSignals.of(table, curve, path));
        json.writeEndObject();
    }

    private void running(JsonGenerator json, RunningPath history) {
        List<RunningPoint> path = history.points();
        double tau = fit.psi().threshold(level);
        RunningPoint last = path.get(path.size() - 1);
        json.writeNumberProperty("filter_last_mean", last.level() - tau);
        json.writeNumberProperty("filter_last_sd", last.sd());
        numbers(
                json,
                "filter_seq_mean",
                path.stream().map(point -> point.level() - tau).toList());
        if (standard.criticalSteps().isEmpty()) {
            return;
        }
        PlainNextCase next = PlainNextCase.of(fit, table, history, standard.criticalSteps(), level);
        json.writeObjectPropertyStart("readiness_next_case");
        json.writeNumberProperty("p_all", next.chance());
        numbers(json, "p_step", next.steps());
        json.writeNumberProperty("assurance_p50", next.atLeast(0.5));
        json.writeNumberProperty("assurance_p20", next.atLeast(0.2));
        json.writeEndObject();
    }

    private static void evidence(JsonGenerator json, Evidence evidence) {
        json.writeObjectPropertyStart("evidence");
        json.writeNumberProperty("index", evidence.index());
        json.writeStringProperty("strength", evidence.strength().name());
        json.writeNumberProperty("cases", evidence.cases());
        json.writeNumberProperty("scorers", evidence.scorers());
        json.writeBooleanProperty("shown", evidence.shown());
        json.writeBooleanProperty("may_decide", evidence.mayDecide());
        strings(
                json,
                "missing",
                evidence.reasons().stream().map(r -> r.kind().name()).toList());
        json.writeStringProperty("statement", evidence.statement());
        json.writeEndObject();
    }

    private static void readiness(JsonGenerator json, Readiness readiness) {
        json.writeStartObject();
        json.writeStringProperty("standard", readiness.standard().code());
        json.writeNumberProperty("level", readiness.standard().level());
        json.writeNumberProperty("wanted_chance", readiness.standard().chance());
        json.writeNumberProperty("chance", readiness.chance());
        json.writeNumberProperty("low", readiness.low());
        json.writeNumberProperty("high", readiness.high());
        json.writeNumberProperty("assurance", readiness.assurance());
        json.writeObjectPropertyStart("steps");
        readiness.steps().forEach(step -> json.writeNumberProperty(step.step(), step.chance()));
        json.writeEndObject();
        json.writeStringProperty("says", readiness.support().words());
        json.writeObjectPropertyStart("forecast");
        json.writeBooleanProperty("shown", readiness.forecast().shown());
        json.writeNumberProperty("low", readiness.forecast().low());
        json.writeNumberProperty("median", readiness.forecast().median());
        json.writeNumberProperty("high", readiness.forecast().high());
        json.writeNumberProperty("within_10", readiness.forecast().within10());
        json.writeNumberProperty("within_20", readiness.forecast().within20());
        json.writeNumberProperty("within_60", readiness.forecast().within60());
        json.writeEndObject();
        json.writeEndObject();
    }

    private void supervisors(JsonGenerator json, List<Double> effects) {
        List<PopulationFit.Severity> severities = fit.severities();
        List<Double> means =
                severities.stream().map(PopulationFit.Severity::mean).toList();
        List<Double> sds = severities.stream().map(PopulationFit.Severity::sd).toList();
        json.writeObjectPropertyStart("supervisors");
        strings(json, "ids", fit.supervisors());
        numbers(json, "severity", means);
        numbers(json, "sd", sds);
        flags(json, ScorerSignals.of(fit, table));
        json.writeEndObject();
        if (fit.terms().isStatic()) {
            numbers(json, "trainee_effects", effects);
            numbers(json, "supervisor_severity", means);
            numbers(json, "supervisor_sd_laplace", sds);
        }
    }

    private static void flags(JsonGenerator json, List<Flag> flags) {
        json.writeArrayPropertyStart("flags");
        for (Flag flag : flags) {
            json.writeStartObject();
            json.writeStringProperty("kind", flag.kind().name());
            json.writeStringProperty("subject", flag.subject());
            json.writeStringProperty("where", flag.where());
            json.writeNumberProperty("value", flag.value());
            json.writeStringProperty("sentence", flag.sentence());
            json.writeStringProperty("raised_without_cause", flag.kind().falseAlarms());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** The gradient with difficulties in the file's order, the last of them minus the sum of the others. */
    private Map<String, List<Double>> gradientInStepOrder() {
        Map<String, List<Double>> ordered = new LinkedHashMap<>(gradient);
        List<Double> byTable = new ArrayList<>(gradient.getOrDefault("beta", List.of()));
        if (!byTable.isEmpty()) {
            byTable.add(0.0);
            List<Double> all = inStepOrder(byTable);
            double last = all.get(all.size() - 1);
            ordered.put(
                    "beta",
                    all.subList(0, all.size() - 1).stream()
                            .map(slope -> slope - last)
                            .toList());
        }
        return ordered;
    }

    private static void id(JsonGenerator json, String name, String id) {
        boolean number = id.length() <= 9 && id.matches("0|[1-9][0-9]*");
        if (number) {
            json.writeNumberProperty(name, Integer.parseInt(id));
        } else {
            json.writeStringProperty(name, id);
        }
    }

    private static void numbers(JsonGenerator json, String name, List<Double> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeNumber);
        json.writeEndArray();
    }

    private static void strings(JsonGenerator json, String name, List<String> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeString);
        json.writeEndArray();
    }
}
