// SPDX-License-Identifier: Apache-2.0
package kerfglow.distribution;

import com.github.packageurl.MalformedPackageURLException;
import com.github.packageurl.PackageURL;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.UUID;
import org.cyclonedx.Version;
import org.cyclonedx.exception.GeneratorException;
import org.cyclonedx.generators.BomGeneratorFactory;
import org.cyclonedx.model.Bom;
import org.cyclonedx.model.Component;
import org.cyclonedx.model.Dependency;
import org.cyclonedx.model.Hash;
import org.cyclonedx.model.License;
import org.cyclonedx.model.LicenseChoice;
import org.cyclonedx.model.Metadata;
import org.cyclonedx.model.Pedigree;
import org.cyclonedx.model.license.Expression;

/** The CycloneDX bill of what one program ships: each jar with name, version, licence, digest and, where Maven knows it, its package URL. */
final class BillOfMaterials {
    private BillOfMaterials() {
    }

    static void write(Path file, List<Shipped> jars, String platform, String version, Instant built) throws IOException {
        try {
            Component program = component(Component.Type.APPLICATION, "kerfglow", version, Shipped.OURS);
            program.setBomRef("kerfglow@" + version);
            program.setDescription("for " + platform);
            Dependency uses = new Dependency(program.getBomRef());
            Bom bom = new Bom();
            StringBuilder contents = new StringBuilder(platform);
            for (Shipped jar : jars) {
                Component component = of(jar);
                bom.addComponent(component);
                uses.addDependency(new Dependency(component.getBomRef()));
                contents.append(component.getHashes().get(0).getValue());
            }
            Metadata metadata = new Metadata();
            metadata.setComponent(program);
            metadata.setTimestamp(Date.from(built));
            bom.setMetadata(metadata);
            bom.addDependency(uses);
            // From the contents, so that the same build writes the same bill.
            bom.setSerialNumber("urn:uuid:" + UUID.nameUUIDFromBytes(contents.toString().getBytes(StandardCharsets.UTF_8)));
            Files.writeString(file, BomGeneratorFactory.createJson(Version.VERSION_16, bom).toJsonString().replace("\r\n", "\n"));
        } catch (GeneratorException | MalformedPackageURLException e) {
            throw new IOException("the bill of materials of " + platform + " could not be written: " + e.getMessage(), e);
        }
    }

    private static Component of(Shipped jar) throws MalformedPackageURLException {
        Component component = component(Component.Type.LIBRARY, jar.name(), jar.version(), jar.licence());
        component.addHash(new Hash(Hash.Algorithm.SHA_256, Dependencies.sha256(jar.jar())));
        component.setBomRef(jar.name() + "@" + jar.version());
        Dependencies.Library library = jar.library();
        if (library != null) {
            component.setGroup(library.group());
            component.setPurl(new PackageURL("maven", library.group(), library.artifact(), library.version(), null, null));
            if (library.wrapped()) {
                Pedigree pedigree = new Pedigree();
                pedigree.setNotes("The build adds an OSGi manifest; the classes are those of the artifact.");
                component.setPedigree(pedigree);
            }
        } else if (jar.name().equals(Shipped.FONT_BUNDLE)) {
            component.addComponent(component(Component.Type.FILE, "Liberation Sans Regular", "2.1.5", Shipped.FONT));
        }
        return component;
    }

    private static Component component(Component.Type type, String name, String version, String licence) {
        Component component = new Component();
        component.setType(type);
        component.setName(name);
        component.setVersion(version);
        LicenseChoice choice = new LicenseChoice();
        if (licence.contains(" ")) {
            choice.setExpression(new Expression(licence));
        } else {
            License license = new License();
            license.setId(licence);
            choice.addLicense(license);
        }
        component.setLicenses(choice);
        return component;
    }
}
