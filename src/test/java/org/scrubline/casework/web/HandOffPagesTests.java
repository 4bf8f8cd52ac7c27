package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.QrCode;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@ScrublineTest
class HandOffPagesTests {

    private static final Pattern SHOWN = Pattern.compile("<p class=\"code\"><b>([A-Z0-9-]{9})</b>");
    private static final Pattern STROKE = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-\\3z");

    @Autowired
    MockMvc mvc;

    @Autowired
    Cases cases;

    @Autowired
    Sheets sheets;

    @Autowired
    Rubrics rubrics;

    @Autowired
    ScrublineClock clock;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;
    UUID caseId;
    UUID sheet;

    @BeforeEach
    void logACase() {
        here = TestProgramme.open(organisations.open(), rubrics);
        Instant ended = clock.instant().minus(Duration.ofHours(1));
        caseId = here.organisation()
                .in(() -> cases.log(here.trainee(), here.entry("K7-204", ended).done())
                        .orThrow()
                        .id());
        sheet = here.organisation()
                .in(() -> sheets.toScore(here.supervisor().personId()))
                .get(0)
                .sheetId();
    }

    @Test
    void theTraineeShowsACodeThatTheSupervisorEntersOnAnotherDevice() throws Exception {
        assertThat(body(get("/cases/" + caseId), here.trainee())).contains("/cases/" + caseId + "/hand-off");
        String shown = offer();
        Matcher code = SHOWN.matcher(shown);
        assertThat(code.find()).isTrue();
        assertThat(body(get("/cases/" + caseId + "/hand-off"), here.trainee()))
                .as("shown once")
                .doesNotContain(code.group(1));

        assertThat(body(get("/hand-off").param("code", code.group(1)), here.supervisor()))
                .contains("value=\"" + code.group(1) + "\"")
                .doesNotContain("F. Hallinor");
        assertThat(take(code.group(1), here.supervisor()).getResponse().getRedirectedUrl())
                .isEqualTo("/sheets/" + sheet);
        assertThat(take(code.group(1), here.supervisor()).getResponse().getStatus())
                .isEqualTo(422);
    }

    /** The picture is read back by the reader of the library that is not used to draw it. */
    @Test
    void aCameraReadsTheAddressWithTheCode() throws Exception {
        String text = "https://records.example.org/hand-off?code=ABCD-EFGH";
        QrCode picture = QrCode.of(text);
        int scale = 4;
        int width = picture.size() * scale;
        int[] pixels = new int[width * width];
        Arrays.fill(pixels, 0xFFFFFF);
        Matcher stroke = STROKE.matcher(picture.path());
        int strokes = 0;
        while (stroke.find()) {
            strokes++;
            for (int x = Integer.parseInt(stroke.group(1)) * scale;
                    x < (Integer.parseInt(stroke.group(1)) + Integer.parseInt(stroke.group(3))) * scale;
                    x++) {
                for (int y = Integer.parseInt(stroke.group(2)) * scale, n = 0; n < scale; n++) {
                    pixels[(y + n) * width + x] = 0;
                }
            }
        }
        assertThat(strokes).isPositive();
        assertThat(picture.path().replaceAll(STROKE.pattern(), "")).isEmpty();
        BinaryBitmap bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, width, pixels)));
        assertThat(new QRCodeReader().decode(bitmap).getText()).isEqualTo(text);
    }

    @Test
    void anotherSupervisorIsToldWhoWasAskedBeforeTakingItOver() throws Exception {
        SignedIn second = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
        Matcher code = SHOWN.matcher(offer());
        assertThat(code.find()).isTrue();
        MvcResult first = take(code.group(1), second);
        assertThat(first.getResponse().getStatus()).isEqualTo(422);
        assertThat(first.getResponse().getContentAsString())
                .contains("Dr Ottilie Brannock was asked to score Fenna Hallinor.", "name=\"instead\" value=\"true\"");
        assertThat(perform(post("/hand-off").param("code", code.group(1)).param("instead", "true"), second)
                        .getResponse()
                        .getRedirectedUrl())
                .isEqualTo("/sheets/" + sheet);
        assertThat(perform(get("/sheets/" + sheet), here.supervisor())
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void everyoneElseFindsNothing() throws Exception {
        for (SignedIn who : List.of(here.trainee(), here.director())) {
            assertThat(perform(get("/hand-off"), who).getResponse().getStatus()).isEqualTo(404);
            assertThat(perform(post("/hand-off").param("code", "AAAA-AAAA"), who)
                            .getResponse()
                            .getStatus())
                    .isEqualTo(404);
        }
        assertThat(perform(get("/cases/" + caseId + "/hand-off"), here.supervisor())
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
        assertThat(perform(
                                post("/cases/" + caseId + "/hand-off")
                                        .param("sheet", UUID.randomUUID().toString()),
                                here.trainee())
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
    }

    private String offer() throws Exception {
        MvcResult made =
                perform(post("/cases/" + caseId + "/hand-off").param("sheet", sheet.toString()), here.trainee());
        assertThat(made.getResponse().getRedirectedUrl()).isEqualTo("/cases/" + caseId + "/hand-off");
        MvcResult shown = mvc.perform(get("/cases/" + caseId + "/hand-off")
                        .cookie(made.getResponse().getCookies())
                        .with(LogIn.as(here.trainee())))
                .andReturn();
        return shown.getResponse().getContentAsString();
    }

    private MvcResult take(String code, SignedIn who) throws Exception {
        return perform(post("/hand-off").param("code", code), who);
    }

    private String body(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        MvcResult answer = perform(request, who);
        assertThat(answer.getResponse().getStatus()).isEqualTo(200);
        return answer.getResponse().getContentAsString();
    }

    private MvcResult perform(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        return mvc.perform(request.with(csrf()).with(LogIn.as(who))).andReturn();
    }
}
