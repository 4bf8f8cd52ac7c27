package org.scrubline.training.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.ExposurePlan;
import org.scrubline.people.ExposurePlans;
import org.scrubline.people.LedProgrammes;
import org.scrubline.people.Programme;
import org.scrubline.platform.FormView;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Family;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** How many cases of each family a year of training is planned to bring, month by month. */
@Controller
@RequestMapping(ExposurePlanController.PATH)
class ExposurePlanController {

    static final String PATH = "/exposure-plan";
    private static final int UNPROCESSABLE = 422;

    private final ExposurePlans plans;
    private final LedProgrammes led;
    private final Wording wording;

    ExposurePlanController(ExposurePlans plans, LedProgrammes led, Wording wording) {
        this.plans = plans;
        this.led = led;
        this.wording = wording;
    }

    /** A month's number to enter. */
    record Month(String field, String label) {}

    @GetMapping
    String plan(
            @AuthenticationPrincipal SignedIn who,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        Programme of = led.of(who, programme);
        model.addAttribute("programme", of);
        model.addAttribute("plan", table(of, plans.of(of.id())));
        return "training/plan";
    }

    private TableView table(Programme programme, ExposurePlan plan) {
        List<Column> columns = Stream.concat(
                        Stream.of(new Column(wording.text("plan.family"), false)),
                        Stream.concat(
                                months().mapToObj(month -> new Column(Integer.toString(month), true)),
                                Stream.of(new Column(wording.text("plan.year"), true))))
                .toList();
        return new TableView(
                columns,
                Arrays.stream(Family.values())
                        .map(family -> row(programme, plan, family))
                        .toList());
    }

    private List<Cell> row(Programme programme, ExposurePlan plan, Family family) {
        List<Integer> months = plan.months(family.name());
        Cell name = new Cell(name(family), PATH + "/" + family + "?programme=" + programme.id());
        Cell year = Cell.of(months.stream().mapToInt(Integer::intValue).sum());
        return Stream.of(Stream.of(name), months.stream().map(Cell::of), Stream.of(year))
                .flatMap(cells -> cells)
                .toList();
    }

    @GetMapping("/{family}")
    String family(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable Family family,
            @RequestParam(required = false) @Nullable UUID programme,
            Model model) {
        Programme of = led.of(who, programme);
        List<Integer> months = plans.of(of.id()).months(family.name());
        Map<String, String> values = new HashMap<>();
        months().forEach(month ->
                values.put(ExposurePlans.field(month), months.get(month - 1).toString()));
        return show(of, family, new FormView(values, List.of()), model);
    }

    @PostMapping("/{family}")
    String change(
            @AuthenticationPrincipal SignedIn who,
            @PathVariable Family family,
            @RequestParam(required = false) @Nullable UUID programme,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Programme of = led.of(who, programme);
        return plans.plan(who, of.id(), family.name(), typed)
                .fold(
                        planned -> {
                            redirect.addFlashAttribute("flash", wording.text("plan.kept", name(family)));
                            return "redirect:" + PATH + "?programme=" + of.id();
                        },
                        reasons -> {
                            response.setStatus(UNPROCESSABLE);
                            return show(of, family, new FormView(typed, wording.errors(reasons)), model);
                        });
    }

    private String show(Programme programme, Family family, FormView form, Model model) {
        model.addAttribute("programme", programme);
        model.addAttribute("family", family);
        model.addAttribute("name", name(family));
        model.addAttribute(
                "months",
                months().mapToObj(month -> new Month(ExposurePlans.field(month), wording.text("plan.month", month)))
                        .toList());
        model.addAttribute("form", form);
        return "training/plan-family";
    }

    private static IntStream months() {
        return IntStream.rangeClosed(1, ExposurePlan.MONTHS);
    }

    private String name(Family family) {
        return wording.text("rubric.family." + family);
    }
}
