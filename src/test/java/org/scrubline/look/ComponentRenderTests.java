package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathConstants;
import javax.xml.xpath.XPathFactory;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class ComponentRenderTests {

    @TestFactory
    Stream<DynamicTest> everyExampleHasWhatItPromises() {
        return Component.all().stream()
                .flatMap(component -> component.examples().stream()
                        .map(example -> DynamicTest.dynamicTest(
                                component.name() + ": " + example.name(), () -> check(component, example))));
    }

    @Test
    void everyComponentHasAnExampleWithAPromise() {
        assertThat(Component.all())
                .hasSizeGreaterThan(15)
                .allSatisfy(component -> assertThat(component.examples())
                        .as(component.name())
                        .isNotEmpty()
                        .allSatisfy(example -> assertThat(example.has()).isNotEmpty()));
    }

    private static void check(Component component, Component.Example example) throws Exception {
        String markup = Rendering.example(component, example);
        // Well-formed on purpose: the same fragments are printed to PDF, whose parser reads XML.
        Document document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader("<body>" + markup + "</body>")));
        for (String path : example.has()) {
            assertThat(found(document, path)).as("%s in%n%s", path, markup).isPositive();
        }
        List<String> hasNot = example.hasNot() == null ? List.of() : example.hasNot();
        for (String path : hasNot) {
            assertThat(found(document, path)).as("%s in%n%s", path, markup).isZero();
        }
        assertThat(markup).doesNotContain("??").doesNotContain(" style=").doesNotContain(" onclick=");
    }

    private static int found(Document document, String path) throws Exception {
        NodeList nodes =
                (NodeList) XPathFactory.newInstance().newXPath().evaluate(path, document, XPathConstants.NODESET);
        return nodes.getLength();
    }
}
