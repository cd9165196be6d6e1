package coldround.scoring;

import coldround.reason.Source;
import java.util.OptionalDouble;

/**
 * What scoring takes for granted of one kind of unit: a row of scoring/kinds.csv.
 *
 * @param name as a person would say it
 * @param lifeClass class in service-life.csv
 * @param faultClass class in fault-priors.csv
 * @param temperature medium, low or comfort
 * @param food whether it keeps food
 * @param condenserPlace where the condenser stands if the equipment list does not say
 * @param designSplitK usual split with a clean coil
 * @param differenceLeastK usual air entering less evaporating temperature, from
 * @param differenceMostK and to; empty where it is not judged
 * @param superheatMostK greatest usual superheat of the suction line; empty where it is not judged
 */
public record KindRule(
    String kind,
    String name,
    String lifeClass,
    String faultClass,
    String temperature,
    boolean food,
    String condenserPlace,
    double designSplitK,
    OptionalDouble differenceLeastK,
    OptionalDouble differenceMostK,
    OptionalDouble superheatMostK,
    Source source) {}
