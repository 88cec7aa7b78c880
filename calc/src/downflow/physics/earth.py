"""How far two places are apart.

Used to find the weather stations nearest to a home. Distance alone is a poor guide in
mountains; the caller shows the difference in elevation beside it.
"""

import math

# Mean radius of the earth, 6,371.009 km. [statute miles]
EARTH_RADIUS_MILES = 3958.761


def great_circle_miles(
    lat1_deg: float, lon1_deg: float, lat2_deg: float, lon2_deg: float
) -> float:
    """Shortest distance over a round earth between two points.

    Args:
        lat1_deg: Latitude of the first, north above zero. [degrees]
        lon1_deg: Longitude of the first, east above zero. [degrees]
        lat2_deg: Latitude of the second. [degrees]
        lon2_deg: Longitude of the second. [degrees]

    Returns:
        Distance. [statute miles]

    Raises:
        ValueError: A latitude beyond a pole, or a longitude beyond 180 degrees.

    Holds for: the whole earth, within 0.6 % of the true (flattened) one.
    Source: haversine formula; mean radius of the GRS 80 ellipsoid.
    """
    for lat, lon in ((lat1_deg, lon1_deg), (lat2_deg, lon2_deg)):
        if not -90 <= lat <= 90:
            raise ValueError(f"latitude {lat:g}: must lie within -90 and 90 degrees")
        if not -180 <= lon <= 180:
            raise ValueError(f"longitude {lon:g}: must lie within -180 and 180 degrees")
    lat1, lat2 = math.radians(lat1_deg), math.radians(lat2_deg)
    half_lat = (lat2 - lat1) / 2
    half_lon = math.radians(lon2_deg - lon1_deg) / 2
    square = math.sin(half_lat) ** 2 + math.cos(lat1) * math.cos(lat2) * math.sin(half_lon) ** 2
    return 2 * EARTH_RADIUS_MILES * math.asin(math.sqrt(min(1.0, square)))
