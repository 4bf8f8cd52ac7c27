package org.scrubline.command;

import static org.scrubline.command.CurvesJson.flags;
import static org.scrubline.command.CurvesJson.id;
import static org.scrubline.command.CurvesJson.numbers;
import static org.scrubline.command.CurvesJson.strings;

import java.util.List;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.CurvePoint;
import org.scrubline.scoring.curve.Evidence;
import org.scrubline.scoring.curve.PlainNextCase;
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.scoring.curve.RunningPath;
import org.scrubline.scoring.curve.RunningPoint;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.StepCurve;
import org.scrubline.scoring.curve.TraineeSignals;
import tools.jackson.core.JsonGenerator;

/** Writes one trainee's part of the result. */
final class CurvesTraineeReport {

    private final CurvesScores scores;
    private final ScoreTable table;
    private final PopulationFit fit;
    private final ProcedureStandard standard;
    private final int level;

    CurvesTraineeReport(CurvesScores scores, PopulationFit fit, ProcedureStandard standard, int level) {
        this.scores = scores;
        this.table = scores.table();
        this.fit = fit;
        this.standard = standard;
        this.level = level;
    }

    void write(JsonGenerator json, CompetencyCurve curve) {
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
                scores.inStepOrder(curve.steps().stream().map(StepCurve::effect).toList()));
        RunningPath path = RunningPath.of(fit, table, curve.trainee());
        running(json, path);
        numbers(json, "experience", p.stream().map(CurvePoint::experience).toList());
        numbers(json, "band_low", p.stream().map(CurvePoint::low).toList());
        numbers(json, "band_high", p.stream().map(CurvePoint::high).toList());
        numbers(
                json,
                "delta_sd",
                scores.inStepOrder(
                        curve.steps().stream().map(StepCurve::effectSd).toList()));
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
}
