package org.scrubline.command;

import static org.scrubline.command.CurvesJson.flags;
import static org.scrubline.command.CurvesJson.numbers;
import static org.scrubline.command.CurvesJson.strings;

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
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.scoring.curve.Psi;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.ScorerSignals;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.json.JsonMapper;

/** Writes the result as JSON, trainee by trainee, so that the largest file needs one curve in memory. */
final class CurvesReport {

    static final String CAUTION = "Supports, does not replace, the judgement of licensed supervisors and local policy.";

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
            CurvesTraineeReport writer = new CurvesTraineeReport(scores, fit, standard, level);
            json.writeArrayPropertyStart("trainees");
            for (String trainee : table.trainees()) {
                CompetencyCurve curve = CompetencyModel.smooth(fit, table, trainee, standard);
                effects.add(curve.startLevel());
                writer.write(json, curve);
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
        numbers(json, "beta", scores.inStepOrder(psi.difficulty()));
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

    /** The gradient with difficulties in the file's order, the last of them minus the sum of the others. */
    private Map<String, List<Double>> gradientInStepOrder() {
        Map<String, List<Double>> ordered = new LinkedHashMap<>(gradient);
        List<Double> byTable = new ArrayList<>(gradient.getOrDefault("beta", List.of()));
        if (!byTable.isEmpty()) {
            byTable.add(0.0);
            List<Double> all = scores.inStepOrder(byTable);
            double last = all.get(all.size() - 1);
            ordered.put(
                    "beta",
                    all.subList(0, all.size() - 1).stream()
                            .map(slope -> slope - last)
                            .toList());
        }
        return ordered;
    }
}
