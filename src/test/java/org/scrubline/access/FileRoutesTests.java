package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.TakesAlong;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** A page that hands out a file is counted; the name of its route says that it is one. */
@ScrublineTest
class FileRoutesTests {

    private static final List<String> ENDINGS = List.of(".csv", ".pdf", ".json", ".jsonl", ".txt", ".zip", ".xml");

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    @Test
    void everyRouteOfAFileIsCountedAndNothingElseIs() {
        Set<String> files = new TreeSet<>();
        Set<String> counted = new TreeSet<>();
        mapping.getHandlerMethods().forEach((info, handler) -> {
            boolean counts = handler.hasMethodAnnotation(TakesAlong.class);
            for (String route : info.getPatternValues()) {
                if (ENDINGS.stream().anyMatch(route::endsWith)) {
                    files.add(route);
                }
                if (counts) {
                    counted.add(route);
                }
            }
        });
        assertThat(counted).hasSizeGreaterThan(8).isEqualTo(files);
    }

    @Test
    void noRouteTakesAnAddressToFetchAnArchiveOrXml() {
        mapping.getHandlerMethods().forEach((info, handler) -> {
            String consumed =
                    info.getConsumesCondition().getConsumableMediaTypes().toString();
            assertThat(consumed).doesNotContain("xml", "zip", "multipart", "octet-stream");
            for (var parameter : handler.getMethodParameters()) {
                assertThat(parameter.getParameterType().getName())
                        .as("%s", handler)
                        .doesNotContain("Multipart", "java.net.URL", "java.net.URI");
            }
        });
    }
}
